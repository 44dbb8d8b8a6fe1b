'use client'
import { memo } from 'react'

/** Keys that may open or close something count when the finger lifts: its click would land on what appears beneath it. */
const AT_LIFT = new Set(['undo', 'special', 'close', 'previous', 'next'])

/** The four keys at the side, from above: what each is called, and what it does. */
export type SideKey = { name: string; label: string; shown: string }

/**
 * Large keys for one gloved thumb. Each press is one character; nothing repeats, nothing hovers, and a character counts where the finger lands. A keyboard reaches them too, unless its own keys do the same.
 */
export const KeyPad = memo(function KeyPad({
  press,
  side,
  lead,
  hasPoint = true,
  isTabbed = true,
}: {
  press: (key: string) => void
  side: readonly [SideKey, SideKey, SideKey, SideKey]
  /** The key beside zero: a sign where values lie below zero, a limit where one is read, or none. */
  lead: 'sign' | 'limit' | null
  hasPoint?: boolean
  isTabbed?: boolean
}) {
  const key = (name: string, label: string, className = 'key', shown = label) => (
    <button
      key={name}
      type="button"
      className={className}
      aria-label={label}
      tabIndex={isTabbed ? undefined : -1}
      onPointerDown={(event) => {
        // the field keeps the focus, and a finger that lifts elsewhere has pressed all the same
        event.preventDefault()
        if (!AT_LIFT.has(name)) press(name)
      }}
      onClick={(event) => {
        if (AT_LIFT.has(name) || event.detail === 0) press(name)
      }}
    >
      {shown}
    </button>
  )
  const sideKey = ({ name, label, shown }: SideKey) =>
    key(name, label, name === 'next' ? 'key word next' : 'key word', shown)
  return (
    <fieldset className="pad" aria-label="Keys">
      {['7', '8', '9'].map((digit) => key(digit, digit))}
      {sideKey(side[0])}
      {['4', '5', '6'].map((digit) => key(digit, digit))}
      {sideKey(side[1])}
      {['1', '2', '3'].map((digit) => key(digit, digit))}
      {sideKey(side[2])}
      {hasPoint ? key('.', 'Point', 'key', '.') : <span />}
      {key('0', '0')}
      {lead === 'sign' ? key('sign', 'Below zero', 'key', '±') : null}
      {lead === 'limit' ? key('limit', 'Less than, or more than', 'key', '< >') : null}
      {lead === null ? <span /> : null}
      {sideKey(side[3])}
    </fieldset>
  )
})
