'use client'
import { zodResolver } from '@hookform/resolvers/zod'
import { useRouter } from 'next/navigation'
import { useState } from 'react'
import { type FieldValues, useForm, useWatch } from 'react-hook-form'
import { z } from 'zod'
import { ChoiceField, ClockField, SelectField, TextField } from '@/app/_capture/simple-fields'
import { RefusalNote, type ShownRefusal } from '@/app/_ui/refusal-note'
import { openRepairAction } from '@/app/(work)/actions/repair-actions'
import { parseDecimal } from '@/lib/domain/decimal'
import { REPAIR_BODIES } from '@/lib/domain/facts/repair-bodies'
import { Clock, Text } from '@/lib/domain/records/common'
import type { OpenRepairView } from '@/lib/server/views/open-repair-view'

const Form = z.strictObject({
  number: Text.regex(/^[A-Za-z0-9][A-Za-z0-9._/-]*$/, 'letters, digits, dots and dashes'),
  project: Text,
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

/** Open a repair: its number, where it is, and the specification and plan it stands on. A number that was chalked on a pipe is never used again. */
export function OpenRepairForm({ view }: { view: OpenRepairView }) {
  const router = useRouter()
  const [refusal, setRefusal] = useState<ShownRefusal | null>(null)
  const form = useForm<FieldValues>({
    resolver: zodResolver(Form as never) as never,
    defaultValues: { clockView: view.clockView },
    mode: 'onTouched',
  })
  const { control } = form
  const chosen: unknown = useWatch({ control, name: 'specification' })
  const specification = view.specifications.find((one) => one.stream === chosen)
  const save = form.handleSubmit(async (values) => {
    const { number, station, ...rest } = values as z.infer<typeof Form>
    const stream = `repair:${number}`
    const body = REPAIR_BODIES['repair-opened'].safeParse({
      ...rest,
      number,
      stationFromDatum: parseDecimal(station),
      wrap: specification?.wrap,
    })
    if (!body.success)
      return setRefusal({
        code: 'invalid',
        fields: Object.fromEntries(body.error.issues.map((issue) => [issue.path.join('.'), [issue.message]])),
      })
    const answer = await openRepairAction({ stream, body: body.data })
    if (answer.ok) router.push(`/repairs/${encodeURIComponent(number)}`)
    else setRefusal(answer.error)
  })
  return (
    <form className="form" noValidate onSubmit={save}>
      <TextField control={control} path="number" label="Repair number" hint="as chalked on the pipe" />
      <SelectField
        control={control}
        path="project"
        label="Project"
        options={view.projects.map((one) => ({ id: one.stream, label: one.name }))}
      />
      <SelectField
        control={control}
        path="specification"
        label="Specification"
        options={view.specifications.map((one) => ({ id: one.stream, label: one.label }))}
      />
      <SelectField
        control={control}
        path="plan"
        label="Inspection plan"
        options={view.plans.map((one) => ({ id: one.stream, label: one.label }))}
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
      {refusal ? <RefusalNote refusal={refusal} /> : null}
      <button type="submit" className="button" disabled={form.formState.isSubmitting}>
        Open the repair
      </button>
    </form>
  )
}
