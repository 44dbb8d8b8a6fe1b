'use client'
import { type Control, type FieldValues, useWatch } from 'react-hook-form'
import * as z from 'zod'
import { ChoiceField, ClockField, SelectField, TextField } from '@/app/_capture/simple-fields'
import type { RepairGrounds } from '@/lib/domain/capture/repair-grounds'
import { parseDecimal } from '@/lib/domain/decimal'
import type { BodyOf } from '@/lib/domain/facts/fact-kinds'
import { REPAIR_BODIES } from '@/lib/domain/facts/repair-bodies'
import { Clock, Text } from '@/lib/domain/records/common'
import { done, type Result, refused } from '@/lib/domain/result'

/** The fields of a new repair beside its number and project. */
export const RepairFieldsForm = z.strictObject({
  line: Text,
  lineTitle: Text,
  specification: Text,
  plan: Text,
  datum: Text,
  station: z
    .string()
    .refine((text) => parseDecimal(text) !== null, 'millimetres from the datum, with a minus sign upstream of it'),
  clock: Clock,
  clockView: Text,
  geometry: z.enum(['straight', 'bend', 'tee', 'nozzle']),
  arrest: Text,
  flow: Text.optional(),
  contract: Text.optional(),
  className: Text.optional(),
})

/** The body of an opening from its fields; every bad field with what is wrong, as `invalid`. */
export function openingOf(
  fields: z.infer<typeof RepairFieldsForm>,
  at: { number: string; project: string },
  { specifications }: RepairGrounds,
): Result<BodyOf<'repair-opened'>, { code: 'invalid'; fields: Record<string, string[]> }> {
  const { station, ...rest } = fields
  const wrap = specifications.find((one) => one.stream === fields.specification)?.wrap
  const body = REPAIR_BODIES['repair-opened'].safeParse({
    ...rest,
    ...at,
    stationFromDatum: parseDecimal(station),
    wrap,
  })
  if (body.success) return done(body.data)
  return refused({
    code: 'invalid',
    fields: Object.fromEntries(body.error.issues.map((issue) => [issue.path.join('.'), [issue.message]])),
  })
}

/** Where a new repair is, and the specification and plan it stands on. */
export function RepairFields({ control, grounds }: { control: Control<FieldValues>; grounds: RepairGrounds }) {
  const chosen: unknown = useWatch({ control, name: 'specification' })
  const specification = grounds.specifications.find((one) => one.stream === chosen)
  return (
    <>
      <SelectField
        control={control}
        path="specification"
        label="Specification"
        options={grounds.specifications.map((one) => ({ id: one.stream, label: one.label }))}
      />
      <SelectField
        control={control}
        path="plan"
        label="Inspection plan"
        options={grounds.plans.map((one) => ({ id: one.stream, label: one.label }))}
      />
      {specification ? (
        <ChoiceField control={control} path="arrest" label="Kind of leak arrest" options={specification.arrest} />
      ) : null}
      <div className="fields">
        <TextField control={control} path="line" label="Line number" />
        <TextField control={control} path="lineTitle" label="What the line is" />
        <TextField control={control} path="datum" label="Datum" hint="a named fixed feature, for example flange F-3" />
        <TextField control={control} path="station" label="Leak from the datum, mm" hint="minus: upstream" />
        <ClockField control={control} path="clock" label="Clock position of the leak" />
        <TextField control={control} path="clockView" label="Clock positions viewed" />
      </div>
      <ChoiceField control={control} path="geometry" label="Geometry" options={['straight', 'bend', 'tee', 'nozzle']} />
      <div className="fields">
        <TextField control={control} path="flow" label="Flow" optional />
        <TextField control={control} path="contract" label="Contract" optional />
        <TextField control={control} path="className" label="Class" optional />
      </div>
    </>
  )
}
