'use client'
import { useId } from 'react'

/** One of a few, side by side. */
export function Choice<V extends string>({
  legend,
  hint,
  options,
  value,
  change,
}: {
  legend: string
  hint?: string
  options: readonly { value: V; label: string }[]
  value: V | ''
  change: (next: V) => void
}) {
  const id = useId()
  return (
    <fieldset className="field">
      <legend className="label">{legend}</legend>
      {hint ? <span className="hint">{hint}</span> : null}
      <div className="choice">
        {options.map((one) => (
          <label key={one.value}>
            <input type="radio" name={id} checked={value === one.value} onChange={() => change(one.value)} />
            {one.label}
          </label>
        ))}
      </div>
    </fieldset>
  )
}

/** Options that are called what they are. */
export function plainOptions<V extends string>(values: readonly V[]): { value: V; label: string }[] {
  return values.map((value) => ({ value, label: value }))
}
