'use client'
import { useId } from 'react'

/** A PIN, covered as it is keyed. Asked at each signature and never remembered. */
export function PinField({
  label,
  hint,
  value,
  change,
}: {
  label: string
  hint?: string
  value: string
  change: (pin: string) => void
}) {
  const id = useId()
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      {hint ? (
        <span className="hint" id={`${id}-hint`}>
          {hint}
        </span>
      ) : null}
      <input
        id={id}
        type="password"
        inputMode="numeric"
        autoComplete="off"
        maxLength={12}
        {...(hint ? { 'aria-describedby': `${id}-hint` } : {})}
        value={value}
        onChange={(event) => change(event.target.value.replaceAll(/\D/g, ''))}
      />
    </div>
  )
}
