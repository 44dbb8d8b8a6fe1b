'use client'
import { useId } from 'react'
import { type Control, type FieldValues, useController } from 'react-hook-form'
import { FieldShell } from '@/app/_capture/field-shell'
import type { Choice } from './desk-field'

/** Any number of a few things, each a tick. */
export function SeveralField({
  control,
  path,
  label,
  hint,
  optional,
  options,
}: {
  control: Control<FieldValues>
  path: string
  label: string
  hint?: string | undefined
  optional?: boolean | undefined
  options: readonly Choice[]
}) {
  const id = useId()
  const { field, fieldState } = useController({ control, name: path })
  const chosen: string[] = Array.isArray(field.value) ? field.value : []
  return (
    <FieldShell id={id} as="fieldset" label={label} hint={hint} optional={optional} error={fieldState.error}>
      <div className="choice">
        {options.map((option, place) => (
          <label key={option.id}>
            <input
              type="checkbox"
              ref={place === 0 ? field.ref : undefined}
              checked={chosen.includes(option.id)}
              onBlur={field.onBlur}
              onChange={(event) =>
                field.onChange(
                  event.target.checked ? [...chosen, option.id] : chosen.filter((one) => one !== option.id),
                )
              }
            />
            {option.label}
          </label>
        ))}
      </div>
      {options.length === 0 ? <span className="hint">There is nothing to choose from yet.</span> : null}
    </FieldShell>
  )
}
