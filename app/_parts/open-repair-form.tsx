'use client'
import { zodResolver } from '@hookform/resolvers/zod'
import { useRouter } from 'next/navigation'
import { useState } from 'react'
import { type FieldValues, useForm } from 'react-hook-form'
import type { z } from 'zod'
import { SelectField, TextField } from '@/app/_capture/simple-fields'
import { RefusalNote, type ShownRefusal } from '@/app/_ui/refusal-note'
import { openRepairAction } from '@/app/(work)/actions/repair-actions'
import { Text } from '@/lib/domain/records/common'
import type { OpenRepairView } from '@/lib/server/views/open-repair-view'
import { openingOf, RepairFields, RepairFieldsForm } from './repair-fields'

const Form = RepairFieldsForm.extend({
  number: Text.regex(/^[A-Za-z0-9][A-Za-z0-9._/-]*$/, 'letters, digits, dots and dashes'),
  project: Text,
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
  const save = form.handleSubmit(async (values) => {
    const { number, project, ...fields } = values as z.infer<typeof Form>
    const body = openingOf(fields, { number, project }, view)
    if (!body.ok) return setRefusal(body.error)
    const answer = await openRepairAction({ stream: `repair:${number}`, body: body.value, ...(await statedDevice()) })
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
      <RepairFields control={control} grounds={view} />
      {refusal ? <RefusalNote refusal={refusal} /> : null}
      <button type="submit" className="button" disabled={form.formState.isSubmitting}>
        Open the repair
      </button>
    </form>
  )
}

/** This device as an entry names it, so that a number of its own block is taken; nothing where the browser keeps none. */
async function statedDevice(): Promise<{ device?: { id: string; clockOffsetMs: number | null } }> {
  const { deviceHere } = await import('@/lib/capture/outbox/open-browser-outbox')
  const device = window.isSecureContext ? await deviceHere() : null
  return device ? { device } : {}
}
