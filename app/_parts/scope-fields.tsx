'use client'

export type ScopeState = { kind: 'whole' | 'area' | 'up-to-step'; text: string }

/** The scope as the facts take it; null while it is incomplete. */
export function scopeValue(
  value: ScopeState,
): { kind: 'whole' } | { kind: 'area'; area: string } | { kind: 'up-to-step'; step: string } | null {
  if (value.kind === 'whole') return { kind: 'whole' }
  const text = value.text.trim()
  if (text === '') return null
  return value.kind === 'area' ? { kind: 'area', area: text } : { kind: 'up-to-step', step: text }
}

const WORDS = [
  ['whole', 'Whole point'],
  ['area', 'Part of the area'],
  ['up-to-step', 'Up to a step'],
] as const

/** What a release covers; the rest stays blocked. */
export function ScopeFields({ value, change }: { value: ScopeState; change: (next: ScopeState) => void }) {
  return (
    <fieldset className="field">
      <legend className="label">Scope</legend>
      <div className="choice">
        {WORDS.map(([kind, word]) => (
          <label key={kind}>
            <input
              type="radio"
              name="release-scope"
              checked={value.kind === kind}
              onChange={() => change({ kind, text: '' })}
            />
            {word}
          </label>
        ))}
      </div>
      {value.kind === 'whole' ? null : (
        <label className="field">
          <span className="label">
            {value.kind === 'area'
              ? 'Which area, for example A–C, 9 to 3 o’clock'
              : 'Up to which step, for example fill only, no wrap'}
          </span>
          <input value={value.text} onChange={(event) => change({ ...value, text: event.target.value })} />
        </label>
      )}
    </fieldset>
  )
}
