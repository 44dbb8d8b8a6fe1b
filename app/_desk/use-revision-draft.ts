'use client'
import { zodResolver } from '@hookform/resolvers/zod'
import { useRouter } from 'next/navigation'
import { useRef, useState } from 'react'
import { type FieldValues, useForm } from 'react-hook-form'
import { v7 } from 'uuid'
import type { ZodType } from 'zod'
import { streamOfNumber } from './stream-name'
import { type SendAnswer, useSending } from './use-sending'

export type RevisionDraftProps = {
  kind: 'specification' | 'plan'
  stream: string | null
  initial: FieldValues
  heads: readonly { stream: string; length: number }[]
}

/** Where and what is wrong in a draft, a line each. */
export type DraftFault = { path: string; message: string }

/** A draft of a specification or plan being edited: checked whole by its schema, saved as one fact, nothing lost on a refusal. */
export function useRevisionDraft(
  { kind, stream, initial, heads }: RevisionDraftProps,
  schema: ZodType,
  clean: (values: FieldValues) => unknown,
  action: (input: unknown) => Promise<SendAnswer>,
) {
  const router = useRouter()
  const id = useRef(v7())
  const [faults, setFaults] = useState<DraftFault[]>([])
  const { state, refusal, send } = useSending()
  const form = useForm<FieldValues>({
    defaultValues: initial,
    mode: 'onSubmit',
    resolver: async (values, context, options) =>
      zodResolver(schema as never)(clean(values) as never, context, options as never) as never,
  })
  const save = async () => {
    const parsed = schema.safeParse(clean(form.getValues()))
    if (!parsed.success)
      return setFaults(parsed.error.issues.map((issue) => ({ path: issue.path.join(' '), message: issue.message })))
    setFaults([])
    const body = parsed.data as { number: string }
    const target = stream ?? streamOfNumber(kind, body.number)
    if (!target) return setFaults([{ path: 'number', message: 'needs a letter or a digit' }])
    if (
      !(await send(() =>
        action({
          stream: target,
          body: { body },
          id: id.current,
          heads: stream ? heads : [{ stream: target, length: 0 }],
        }),
      ))
    )
      return
    id.current = v7()
    router.push(`/${kind}s/${encodeURIComponent(target.slice(target.indexOf(':') + 1))}?rev=draft`)
  }
  const submit = form.handleSubmit(save, save)
  return { form, submit, faults, state, refusal }
}
