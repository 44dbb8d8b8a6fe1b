'use client'
import { type Control, type FieldValues, useController } from 'react-hook-form'
import { SelectField } from '@/app/_capture/simple-fields'
import { DESIGN_WORDS } from '@/lib/domain/judge/exact-limit'
import { showUnit, UNITS } from '@/lib/domain/reading'
import { DESIGN_VALUES } from '@/lib/domain/specification'
import { DecimalField } from './decimal-field'

const FROM = [
  ['', 'no limit'],
  ['specification', 'a value'],
  ['design', 'from the design sheet'],
] as const

/** A limit: none, a value of the specification with its unit, or a value of the design sheet, times a factor where stated. */
export function LimitField({ control, path, label }: { control: Control<FieldValues>; path: string; label: string }) {
  const { field } = useController({ control, name: path })
  const from = (field.value as { from?: string } | undefined)?.from ?? ''
  return (
    <fieldset className="group">
      <legend>{label}</legend>
      <div className="choice" role="radiogroup" aria-label={`${label} comes from`}>
        {FROM.map(([value, word]) => (
          <label key={value}>
            <input
              type="radio"
              name={`${path}-from`}
              checked={from === value}
              onChange={() => field.onChange(value === '' ? undefined : { from: value })}
            />
            {word}
          </label>
        ))}
      </div>
      {from === 'specification' ? (
        <div className="fields">
          <DecimalField control={control} path={`${path}.value`} label="Value" />
          <SelectField
            control={control}
            path={`${path}.unit`}
            label="Unit"
            options={UNITS.map((unit) => ({ id: unit, label: showUnit(unit) }))}
          />
        </div>
      ) : null}
      {from === 'design' ? (
        <div className="fields">
          <SelectField
            control={control}
            path={`${path}.value`}
            label="Value of the design sheet"
            options={DESIGN_VALUES.map((value) => ({ id: value, label: DESIGN_WORDS[value] }))}
          />
          <DecimalField control={control} path={`${path}.factor`} label="Times" optional />
        </div>
      ) : null}
    </fieldset>
  )
}
