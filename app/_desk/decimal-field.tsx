'use client'
import { useId, useState } from 'react'
import { type Control, type FieldValues, useController } from 'react-hook-form'
import { FieldShell } from '@/app/_capture/field-shell'
import { Decimal, parseDecimal, showDecimal } from '@/lib/domain/decimal'

/** An exact decimal without a unit of its own. What cannot be read stays as keyed and is named. */
export function DecimalField({
  control,
  path,
  label,
  hint,
  optional,
  unit,
}: {
  control: Control<FieldValues>
  path: string
  label: string
  hint?: string | undefined
  optional?: boolean | undefined
  unit?: string | undefined
}) {
  const id = useId()
  const { field, fieldState } = useController({ control, name: path })
  const kept = Decimal.safeParse(field.value)
  const [text, setText] = useState(
    kept.success ? showDecimal(kept.data) : typeof field.value === 'string' ? field.value : '',
  )
  const shown = field.value === undefined ? '' : text
  return (
    <FieldShell
      id={id}
      label={label}
      hint={hint}
      optional={optional}
      error={fieldState.error}
      wrongText={kept.success ? undefined : shown}
    >
      <div className={unit ? 'with-unit' : undefined}>
        <input
          id={id}
          ref={field.ref}
          inputMode="decimal"
          autoComplete="off"
          value={shown}
          onBlur={field.onBlur}
          aria-invalid={fieldState.invalid}
          aria-describedby={`${id}-about`}
          onChange={(event) => {
            setText(event.target.value)
            field.onChange(
              event.target.value.trim() === '' ? undefined : (parseDecimal(event.target.value) ?? event.target.value),
            )
          }}
        />
        {unit ? <span>{unit}</span> : null}
      </div>
    </FieldShell>
  )
}
