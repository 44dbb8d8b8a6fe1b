'use client'
import { zodResolver } from '@hookform/resolvers/zod'
import { useRouter } from 'next/navigation'
import { useMemo, useRef, useState } from 'react'
import { type FieldValues, useForm } from 'react-hook-form'
import { v7 } from 'uuid'
import type { ZodType } from 'zod'
import { readNow } from '@/app/_capture/read-now'
import { RefusalNote } from '@/app/_ui/refusal-note'
import { StreamId, type StreamKind, streamKind } from '@/lib/domain/facts/fact'
import { BODIES, type FactKind } from '@/lib/domain/facts/fact-kinds'
import { bodyOfValues } from './body-of-values'
import { DeskControl } from './desk-control'
import type { DeskField } from './desk-field'
import { DraftKeeper } from './draft-keeper'
import { EarlierFields, entryOfEarlier, NOT_EARLIER } from './earlier'
import { LabelField } from './label-field'
import { streamOfNumber } from './stream-name'
import { type SendAnswer, useSending } from './use-sending'

export type ActFormProps = {
  action: (input: unknown) => Promise<SendAnswer>
  kind: FactKind
  /** The stream that takes the fact, or how a new one is named from a field of the body. */
  stream: string | { kind: StreamKind; from: string }
  fields: readonly DeskField[]
  submit: string
  done: string
  /** Parts of the body that are settled by the page. */
  settled?: Record<string, unknown>
  initial?: FieldValues
  heads?: readonly { stream: string; length: number }[]
  /** UTC offset for an event that happened earlier; without one it is always now. */
  utcOffset?: string
  draftKey?: string
  /** A moment of the body that is when it happened: now by the site's clock, or the earlier time that was keyed. */
  stampAs?: { name: string; clockKind: 'real' | 'demo' | 'test' }
  /** Fields that are recorded as "not stated" (null) when nothing was keyed. */
  nullWhenAbsent?: readonly string[]
  /** Lists that are recorded as empty when nothing was ticked. */
  listsWhenAbsent?: readonly string[]
  /** Where to go after success; `{name}` is the stream's name. */
  goTo?: string
  tone?: 'plain' | 'stop'
}

type LabelSpec = Extract<DeskField, { kind: 'label' }>

/** A field that names the new stream and is no part of its body. */
export const NAME_FIELD = 'ownName'

/** One act at the desk: its fields, checked by the fact's own schema, then the command. Nothing keyed is lost on a refusal. */
export function ActForm({
  action,
  kind,
  stream,
  fields,
  submit,
  done,
  settled,
  initial,
  heads,
  utcOffset,
  draftKey,
  stampAs,
  nullWhenAbsent,
  listsWhenAbsent,
  goTo,
  tone,
}: ActFormProps) {
  const router = useRouter()
  const schema = schemaOf(typeof stream === 'string' ? streamKind(StreamId.parse(stream)) : stream.kind, kind)
  const [earlier, setEarlier] = useState(NOT_EARLIER)
  const bodyOf = async (values: FieldValues): Promise<Record<string, unknown>> => ({
    ...Object.fromEntries((nullWhenAbsent ?? []).map((name) => [name, null])),
    ...Object.fromEntries((listsWhenAbsent ?? []).map((name) => [name, []])),
    ...Object.fromEntries(
      Object.entries((bodyOfValues(values) ?? {}) as Record<string, unknown>).filter(([name]) => name !== NAME_FIELD),
    ),
    ...settled,
    ...(stampAs
      ? {
          [stampAs.name]:
            entryOfEarlier(earlier, utcOffset ?? '').observedAt ??
            (await readNow(utcOffset ?? '+00:00', stampAs.clockKind)),
        }
      : {}),
  })
  const form = useForm<FieldValues>({
    defaultValues: initial ?? {},
    mode: 'onTouched',
    resolver: async (values, context, options) =>
      zodResolver(schema as never)((await bodyOf(values)) as never, context, options as never) as never,
  })
  const id = useRef(v7())
  const [nameFault, setNameFault] = useState(false)
  const [keptCount, setKeptCount] = useState(0)
  const { state, refusal, send, again } = useSending()
  const labelField = useMemo(() => fields.find((one): one is LabelSpec => one.kind === 'label'), [fields])
  const save = async () => {
    const body = await bodyOf(form.getValues())
    const target =
      typeof stream === 'string'
        ? StreamId.parse(stream)
        : streamOfNumber(
            stream.kind,
            String((stream.from === NAME_FIELD ? form.getValues(NAME_FIELD) : body[stream.from]) ?? ''),
          )
    if (!target) return setNameFault(true)
    setNameFault(false)
    const isKept = await send(() =>
      action({
        stream: target,
        body,
        id: id.current,
        ...entryOfEarlier(earlier, utcOffset ?? ''),
        ...(heads ? { heads } : {}),
      }),
    )
    if (!isKept) return
    id.current = v7()
    form.reset(initial ?? {})
    setEarlier(NOT_EARLIER)
    setKeptCount(keptCount + 1)
    if (goTo) router.push(goTo.replace('{name}', encodeURIComponent(target.slice(target.indexOf(':') + 1))))
  }
  const { isValid, submitCount } = form.formState
  return (
    <form
      className="form"
      noValidate
      onSubmit={form.handleSubmit(save)}
      onChange={() => {
        if (state === 'kept') again()
      }}
    >
      {draftKey ? <DraftKeeper form={form} draftKey={draftKey} keptCount={keptCount} /> : null}
      {labelField ? <LabelField form={form} spec={labelField} /> : null}
      <div className="fields" key={keptCount}>
        {fields
          .filter((spec) => spec.kind !== 'label')
          .map((spec) => (
            <DeskControl key={spec.name} spec={spec} control={form.control} />
          ))}
      </div>
      {utcOffset ? <EarlierFields value={earlier} change={setEarlier} utcOffset={utcOffset} /> : null}
      {nameFault ? (
        <p className="note refused" role="alert">
          <strong>The number cannot stand as a name.</strong> It needs at least one letter or digit.
        </p>
      ) : null}
      {refusal ? <RefusalNote refusal={refusal} /> : null}
      {submitCount > 0 && !isValid && state !== 'kept' ? (
        <p className="note refused" role="alert">
          <strong>Not saved yet.</strong> Some fields are missing or cannot be read. Nothing keyed is lost.
        </p>
      ) : null}
      {state === 'kept' ? (
        <p className="note good" role="status">
          <strong>{done}</strong>
        </p>
      ) : null}
      <div>
        <button type="submit" className={`button${tone ? ` ${tone}` : ''}`} disabled={state === 'sending'}>
          {state === 'sending' ? 'Saving' : submit}
        </button>
      </div>
    </form>
  )
}

function schemaOf(stream: StreamKind, kind: FactKind): ZodType {
  const bodies: Record<string, ZodType | undefined> = BODIES[stream]
  const schema = bodies[kind]
  if (!schema) throw new RangeError(`no body of ${kind} on ${stream}`)
  return schema
}
