'use client'
import { useController, type Control, type FieldValues } from 'react-hook-form'
import type { FieldSpec } from '@/lib/capture/forms/field-spec'
import { FormField } from './form-field'
import { ChoiceField } from './simple-fields'

/** A part whose fields depend on its kind. What was keyed under another kind is not carried over. */
export function VariantField({ spec, control, path }: { spec: Extract<FieldSpec, { kind: 'variant' }>; control: Control<FieldValues>; path: string }) {
  const { field } = useController({ control, name: `${path}.${spec.by}` })
  const chosen = spec.variants.find((variant) => variant.value === field.value)
  return (
    <fieldset className="group">
      <legend>{spec.label}</legend>
      <ChoiceField control={control} path={`${path}.${spec.by}`} label={spec.label} options={spec.variants.map((variant) => variant.value)} />
      {chosen ? chosen.of.map((inner) => <FormField key={`${chosen.value}-${inner.name}`} spec={inner} control={control} under={path} />) : null}
    </fieldset>
  )
}
