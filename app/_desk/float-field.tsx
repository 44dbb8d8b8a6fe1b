'use client'
import { useId, useState } from 'react'
import { type Control, type FieldValues, useController } from 'react-hook-form'
import { FieldShell } from '@/app/_capture/field-shell'

/** A figure of a formula, such as 1.2e-5: never a limit, never a reading. */
export function FloatField({
  control,
  path,
  label,
  hint,
}: {
  control: Control<FieldValues>
  path: string
  label: string
  hint?: string | undefined
}) {
  const id = useId()
  const { field, fieldState } = useController({ control, name: path })
  const [text, setText] = useState(field.value === undefined ? '' : String(field.value))
  return (
    <FieldShell id={id} label={label} hint={hint} error={fieldState.error} wrongText={text}>
      <input
        id={id}
        ref={field.ref}
        inputMode="decimal"
        autoComplete="off"
        value={text}
        onBlur={field.onBlur}
        aria-invalid={fieldState.invalid}
        aria-describedby={`${id}-about`}
        onChange={(event) => {
          setText(event.target.value)
          const value = event.target.value.trim()
          field.onChange(value === '' ? undefined : /^-?\d+(\.\d+)?(e-?\d+)?$/i.test(value) ? Number(value) : value)
        }}
      />
    </FieldShell>
  )
}
