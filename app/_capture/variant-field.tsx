'use client'
import { Fragment, type ReactNode } from 'react'
import { type Control, type FieldValues, useController } from 'react-hook-form'
import type { FieldSpec } from '@/lib/capture/forms/field-spec'
import { ChoiceField } from './simple-fields'

/** A part whose fields depend on its kind. What was keyed under another kind is not carried over. */
export function VariantField({
  spec,
  control,
  path,
  draw,
}: {
  spec: Extract<FieldSpec, { kind: 'variant' }>
  control: Control<FieldValues>
  path: string
  draw: (spec: FieldSpec, under: string) => ReactNode
}) {
  const { field } = useController({ control, name: `${path}.${spec.by}` })
  const chosen = spec.variants.find((variant) => variant.value === field.value)
  return (
    <fieldset className="group">
      <legend>{spec.label}</legend>
      <ChoiceField
        control={control}
        path={`${path}.${spec.by}`}
        label={spec.label}
        options={spec.variants.map((variant) => variant.value)}
      />
      {chosen
        ? chosen.of.map((inner) => <Fragment key={`${chosen.value}-${inner.name}`}>{draw(inner, path)}</Fragment>)
        : null}
    </fieldset>
  )
}
