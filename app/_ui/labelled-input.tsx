'use client'
import { type ComponentProps, useId } from 'react'

type Props = { label: string; hint?: string | undefined; change: (value: string) => void } & Omit<
  ComponentProps<'input'>,
  'id' | 'onChange'
>

/** One line to key, under its label; never filled in by the browser. */
export function LabelledInput({ label, hint, change, ...input }: Props) {
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
        autoComplete="off"
        {...(hint ? { 'aria-describedby': `${id}-hint` } : {})}
        {...input}
        onChange={(event) => change(event.target.value)}
      />
    </div>
  )
}
