'use client'
import { type Control, type FieldValues, useController } from 'react-hook-form'
import { MeasuredField } from '@/app/_capture/measured-field'
import { ChoiceField, SelectField, TextField, WholeField } from '@/app/_capture/simple-fields'
import { DecimalField } from './decimal-field'
import type { DeskField } from './desk-field'
import { FloatField } from './float-field'
import { LimitField } from './limit-field'
import { LinesField } from './lines-field'
import { SeveralField } from './several-field'

/** The control of one field of a desk form. */
export function DeskControl({
  spec,
  control,
  under = '',
}: {
  spec: DeskField
  control: Control<FieldValues>
  under?: string
}) {
  const shared = {
    control,
    path: under === '' ? spec.name : `${under}.${spec.name}`,
    label: spec.label,
    hint: spec.hint,
    optional: spec.optional,
  }
  switch (spec.kind) {
    case 'text':
    case 'label':
      return <TextField {...shared} />
    case 'remark':
      return <TextField {...shared} long />
    case 'day':
      return <TextField {...shared} type="date" />
    case 'whole':
      return <WholeField {...shared} />
    case 'decimal':
      return <DecimalField {...shared} />
    case 'measured':
      return <MeasuredField {...shared} units={spec.units} />
    case 'reading':
      return <MeasuredField {...shared} units={spec.units} special />
    case 'choice':
      return <ChoiceField {...shared} options={spec.options} />
    case 'select':
      return <SelectField {...shared} options={spec.options} />
    case 'several':
      return <SeveralField {...shared} options={spec.options} />
    case 'lines':
      return <LinesField {...shared} />
    case 'limit':
      return <LimitField control={control} path={shared.path} label={spec.label} />
    case 'float':
      return <FloatField {...shared} />
    case 'flag':
      return <FlagField {...shared} />
    case 'list':
      return <DeskList spec={spec} control={control} path={shared.path} />
  }
}

function FlagField({
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
  const { field } = useController({ control, name: path })
  return (
    <div className="field">
      <div className="choice">
        <label>
          <input
            type="checkbox"
            ref={field.ref}
            checked={field.value === true}
            onChange={(event) => field.onChange(event.target.checked ? true : undefined)}
          />
          {label}
        </label>
      </div>
      {hint ? <span className="hint">{hint}</span> : null}
    </div>
  )
}

function DeskList({
  spec,
  control,
  path,
}: {
  spec: Extract<DeskField, { kind: 'list' }>
  control: Control<FieldValues>
  path: string
}) {
  const { field } = useController({ control, name: path })
  const present: unknown[] = Array.isArray(field.value) ? field.value : []
  return (
    <fieldset className="field">
      <legend className="label">{spec.label}</legend>
      {spec.hint ? <span className="hint">{spec.hint}</span> : null}
      {present.map((_, place) => (
        // Items have no identity before they are saved: the place is what the person sees.
        // biome-ignore lint/suspicious/noArrayIndexKey: see above
        <fieldset key={place} className="group">
          <legend>
            {spec.each} {place + 1}
          </legend>
          {spec.of.map((inner) => (
            <DeskControl key={inner.name} spec={inner} control={control} under={`${path}.${place}`} />
          ))}
          <div>
            <button
              type="button"
              className="button plain"
              onClick={() => field.onChange(present.filter((__, other) => other !== place))}
            >
              Take away {spec.each.toLowerCase()} {place + 1}
            </button>
          </div>
        </fieldset>
      ))}
      <div>
        <button type="button" className="button plain" onClick={() => field.onChange([...present, {}])}>
          {spec.addLabel}
        </button>
      </div>
    </fieldset>
  )
}
