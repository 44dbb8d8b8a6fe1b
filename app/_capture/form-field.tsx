'use client'
import { memo } from 'react'
import type { Control, FieldValues } from 'react-hook-form'
import type { FieldSpec } from '@/lib/capture/forms/field-spec'
import { showUnit } from '@/lib/domain/reading'
import { useCapture } from './capture-context'
import { ChalkGridField } from './chalk-grid-field'
import { ListField } from './list-field'
import { LoggerField } from './logger-field'
import { MarksSlot } from './marks-slot'
import { MeasuredField } from './measured-field'
import { MomentField } from './moment-field'
import { ScannedSelect } from './scanned-select'
import { ChoiceField, ClockField, SelectField, TextField, WholeField } from './simple-fields'
import { VariantField } from './variant-field'

/** Path of a field under its parent; a list of plain values has fields without a name. */
export function pathUnder(parent: string, name: string): string {
  return parent === '' ? name : name === '' ? parent : `${parent}.${name}`
}

const UNIT_WORDS: Record<string, string> = { ShoreD: showUnit('ShoreD'), ShoreA: showUnit('ShoreA') }

type Props = { spec: FieldSpec; control: Control<FieldValues>; under: string }

/** The control of one field of a point form. A key in one field draws no other anew. */
export const FormField = memo(function FormField({ spec, control, under }: Props) {
  const { batches, instruments, persons } = useCapture()
  const path = pathUnder(under, spec.name)
  const shared = { control, path, label: spec.label, hint: spec.hint, optional: spec.optional }
  const draw = (inner: FieldSpec, at: string) => <FormField spec={inner} control={control} under={at} />
  switch (spec.kind) {
    case 'measured':
      return <MeasuredField {...shared} units={spec.units} />
    case 'reading':
      return <MeasuredField {...shared} units={spec.units} special />
    case 'text':
      return <TextField {...shared} />
    case 'remark':
      return <TextField {...shared} long />
    case 'day':
      return <TextField {...shared} type="date" />
    case 'whole':
      return <WholeField {...shared} />
    case 'moment':
      return <MomentField {...shared} />
    case 'yes-no':
      return <ChoiceField {...shared} options={['yes', 'no']} />
    case 'choice':
      return <ChoiceField {...shared} options={spec.options} shown={(option) => UNIT_WORDS[option] ?? option} />
    case 'clock':
      return <ClockField {...shared} />
    case 'person':
      return <SelectField {...shared} options={persons} />
    case 'batch':
      return (
        <ScannedSelect
          {...shared}
          kind="batch"
          options={batches.filter((batch) => spec.roles.some((role) => role === batch.role))}
        />
      )
    case 'instrument':
      return (
        <ScannedSelect
          {...shared}
          kind="instrument"
          options={instruments.filter(
            (one) =>
              spec.measures.length === 0 ||
              one.measures.length === 0 ||
              spec.measures.some((unit) => one.measures.includes(unit)),
          )}
        />
      )
    case 'marks':
      return <MarksSlot spec={spec} control={control} path={path} />
    case 'chalk-grid':
      return <ChalkGridField {...shared} />
    case 'measured-list':
      return (
        <ListField
          {...shared}
          draw={draw}
          each={spec.label}
          addLabel={spec.addLabel}
          atLeast={spec.optional ? 0 : 1}
          of={[{ kind: 'measured', name: '', label: spec.label, units: spec.units }]}
        />
      )
    case 'text-list':
      return (
        <ListField
          {...shared}
          draw={draw}
          each={spec.label}
          addLabel={spec.addLabel}
          atLeast={0}
          of={[{ kind: 'text', name: '', label: spec.label }]}
        />
      )
    case 'list':
      return (
        <>
          {spec.importer === 'logger' ? <LoggerField path={path} /> : null}
          <ListField
            {...shared}
            draw={draw}
            each={spec.each}
            addLabel={spec.addLabel}
            atLeast={spec.atLeast}
            of={spec.of}
          />
        </>
      )
    case 'variant':
      return <VariantField spec={spec} control={control} path={path} draw={draw} />
    case 'group':
      return (
        <fieldset className="group">
          <legend>{spec.label}</legend>
          {spec.of.map((inner) => (
            <FormField key={inner.name} spec={inner} control={control} under={path} />
          ))}
        </fieldset>
      )
  }
})
