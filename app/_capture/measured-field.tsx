'use client'
import { useId, useState } from 'react'
import { type Control, type FieldValues, useController } from 'react-hook-form'
import { canBeNegative } from '@/lib/capture/key-text'
import { parseReading, showUnit, type Unit } from '@/lib/domain/reading'
import { FieldShell } from './field-shell'
import { useKeyDock } from './key-dock'

type Kept = { text?: string; unit?: Unit; kind?: string; reason?: string } | undefined
const SPECIAL = [
  ['through-wall', 'through-wall'],
  ['no-access', 'no access'],
  ['not-inspected', 'not inspected'],
] as const

/** One measured value with its unit as read. The text stays as keyed; what cannot be read as a number is kept and named. */
export function MeasuredField({
  control,
  path,
  label,
  hint,
  optional,
  units,
  special = false,
}: {
  control: Control<FieldValues>
  path: string
  label: string
  hint?: string | undefined
  optional?: boolean | undefined
  units: readonly [Unit, ...Unit[]]
  special?: boolean
}) {
  const id = useId()
  const { field, fieldState } = useController({ control, name: path })
  const kept = field.value as Kept
  const [chosen, setUnit] = useState<Unit>(units[0])
  const unit = kept?.unit ?? chosen
  const isSpecial = special && SPECIAL.some(([kind]) => kind === kept?.kind)
  const key = (text: string, as: Unit) => {
    if (text.trim() === '') return field.onChange(undefined)
    // a dash is the start of a value below zero here: that nothing was inspected is said by its own choice
    const reading = /^[-–]$/.test(text.trim()) ? null : parseReading(text, as)
    field.onChange(reading && (special || reading.kind === 'number') ? reading : { text, unit: as })
  }
  const { leave, ...keyed } = useKeyDock(id, {
    label,
    unit: showUnit(unit),
    text: kept?.text ?? '',
    write: (text) => key(text, unit),
    allows: { point: true, sign: canBeNegative(unit), limits: special },
  })
  return (
    <FieldShell id={id} label={label} hint={hint} optional={optional} error={fieldState.error} wrongText={kept?.text}>
      <div className="with-unit">
        <input
          id={id}
          ref={field.ref}
          {...keyed}
          autoComplete="off"
          enterKeyHint="next"
          disabled={isSpecial}
          value={isSpecial ? '' : (kept?.text ?? '')}
          aria-invalid={fieldState.invalid}
          aria-describedby={`${id}-about`}
          onChange={(event) => key(event.target.value, unit)}
          onBlur={() => {
            leave()
            field.onBlur()
          }}
        />
        {units.length === 1 ? (
          <span>{showUnit(units[0])}</span>
        ) : (
          <select
            aria-label={`Unit of ${label}`}
            value={unit}
            onChange={(event) => {
              const next = units.find((one) => one === event.target.value) ?? units[0]
              setUnit(next)
              if (kept?.text) key(kept.text, next)
            }}
          >
            {units.map((one) => (
              <option key={one} value={one}>
                {showUnit(one)}
              </option>
            ))}
          </select>
        )}
      </div>
      {special && (
        <div className="choice">
          {SPECIAL.map(([kind, word]) => (
            <label key={kind}>
              <input
                type="checkbox"
                checked={kept?.kind === kind}
                onChange={(event) => field.onChange(event.target.checked ? { kind } : undefined)}
              />
              {word}
            </label>
          ))}
        </div>
      )}
    </FieldShell>
  )
}
