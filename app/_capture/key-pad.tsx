'use client'

/** Large keys for one gloved thumb. Each press is one character; nothing repeats and nothing hovers. */
export function KeyPad({
  press,
  disabledSpecial = false,
}: {
  press: (key: string) => void
  disabledSpecial?: boolean
}) {
  const key = (name: string, label: string, className = 'key', shown = label) => (
    <button
      key={name}
      type="button"
      className={className}
      aria-label={label}
      onPointerDown={(event) => {
        event.preventDefault()
        navigator.vibrate?.(8)
        press(name)
      }}
      onClick={(event) => {
        if (event.detail === 0) press(name)
      }}
    >
      {shown}
    </button>
  )
  return (
    <fieldset className="pad" aria-label="Keys">
      {['7', '8', '9'].map((digit) => key(digit, digit))}
      {key('undo', 'Undo the last key', 'key word', 'Undo')}
      {['4', '5', '6'].map((digit) => key(digit, digit))}
      {disabledSpecial ? <span /> : key('special', 'Value is special', 'key word', 'Value is special…')}
      {['1', '2', '3'].map((digit) => key(digit, digit))}
      {key('next', 'Next mark', 'key next', 'Next mark')}
      {['.', '0'].map((digit) => key(digit, digit === '.' ? 'Point' : digit, 'key', digit))}
      {key('<', 'Less than', 'key', '<')}
    </fieldset>
  )
}
