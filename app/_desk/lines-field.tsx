'use client'
import { useId, useState } from 'react'
import { type Control, type FieldValues, useController } from 'react-hook-form'
import { FieldShell } from '@/app/_capture/field-shell'

/** Several short texts, one a line. */
export function LinesField({
  control,
  path,
  label,
  hint,
  optional,
}: {
  control: Control<FieldValues>
  path: string
  label: string
  hint?: string | undefined
  optional?: boolean | undefined
}) {
  const id = useId()
  const { field, fieldState } = useController({ control, name: path })
  const [text, setText] = useState(Array.isArray(field.value) ? field.value.join('\n') : '')
  return (
    <FieldShell id={id} label={label} hint={hint ?? 'One a line'} optional={optional} error={fieldState.error}>
      <textarea
        id={id}
        ref={field.ref}
        value={text}
        onBlur={field.onBlur}
        aria-invalid={fieldState.invalid}
        aria-describedby={`${id}-about`}
        onChange={(event) => {
          setText(event.target.value)
          field.onChange(
            event.target.value
              .split('\n')
              .map((line) => line.trim())
              .filter((line) => line !== ''),
          )
        }}
      />
    </FieldShell>
  )
}
