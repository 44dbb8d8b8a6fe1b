import * as z from 'zod'
import { PersonId, StreamId, type StreamKind, streamKind } from '@/lib/domain/facts/fact'
import { BODIES, type BodyOf, type Fact, type FactKind, type FactOf } from '@/lib/domain/facts/fact-kinds'
import { refused } from '@/lib/domain/result'
import type { Moment } from '@/lib/domain/time'
import { type Act, authorise } from './authorise'
import { type Command, command } from './command'
import type { Desk } from './desk'
import { Entry } from './entry'
import { keptBefore } from './kept-before'
import { lateRefusal } from './late-entry'
import { type Place, placeOf } from './place-of'
import type { Refusal } from './refusal'

export type Subject = { stream: StreamId; facts: Fact[]; place: Place }

/** Who observed what another person enters, and when, as stated. */
export type Observed = { observedBy?: PersonId | undefined; observedAt?: Moment | undefined }

/** How one kind of fact is taken in. `opens`: the stream must not exist yet; otherwise it must. */
export type FactCommand<K extends FactKind> = {
  kind: K
  on: StreamKind
  act: Act | ((body: BodyOf<K>) => Act)
  opens?: true
  /** The first of its kind in a stream that may have been begun by another kind. */
  begins?: true
  /** An observation may move on beside others; a decision is refused when its stream moved. */
  observation?: true
  /** Lets the entry name another person who observed it; says what is wrong with what is stated, by path. */
  observer?: (body: BodyOf<K>, stated: Observed) => Record<string, string[]>
  /** Streams beside its own that the check decides on: the fact is refused when one moved meanwhile. */
  beside?: readonly StreamId[]
  check?: (desk: Desk, subject: Subject, fact: FactOf<K>) => Promise<Refusal | null>
}

/**
 * A command that appends one fact of one kind: `{ stream, body, ...Entry }`. Refuses `invalid`, `not-found`, `exists-already`, `not-allowed`,
 * `late-reason-missing`, `entered-in-future`, `heads-moved`, and what its check refuses.
 */
export function factCommand<K extends FactKind>(spec: FactCommand<K>): Command {
  const bodies: Record<string, z.ZodType | undefined> = BODIES[spec.on]
  const body = bodies[spec.kind]
  if (!body) throw new RangeError(`no body of ${spec.kind} on ${spec.on}`)
  const Form = z.strictObject({
    stream: StreamId.refine((id) => streamKind(id) === spec.on, `a ${spec.on}`),
    body,
    ...Entry,
    ...(spec.observer ? { observedBy: PersonId.optional() } : {}),
  })
  return command(Form, async (desk, form) => {
    const { observedBy } = form as Observed
    const faults = spec.observer?.(form.body as BodyOf<K>, { observedBy, observedAt: form.observedAt }) ?? {}
    if (Object.keys(faults).length > 0) return refused({ code: 'invalid', fields: faults })
    const facts = await desk.factsOf(form.stream)
    const place = facts || spec.opens || spec.begins ? await placeOf(desk, form.stream, facts ?? [], form.body) : null
    if (!place) return refused({ code: 'not-found' })
    const act = typeof spec.act === 'function' ? spec.act(form.body as BodyOf<K>) : spec.act
    const barred = authorise(desk.actor, place.project, desk.today(place.offset), act)
    if (barred) return refused(barred)
    const fact = desk.make({
      stream: form.stream,
      kind: spec.kind,
      body: form.body as BodyOf<K>,
      entry: form,
      observedBy,
      offset: place.offset,
    })
    const again = keptBefore(fact, facts ?? [])
    if (again) return again
    if (facts && (spec.opens || (spec.begins && facts.some((one) => one.kind === spec.kind))))
      return refused({ code: 'exists-already', stream: form.stream })
    const beside = spec.beside ? await desk.headsOf(spec.beside) : []
    const barrier =
      lateRefusal(desk, fact) ??
      (await spec.check?.(desk, { stream: form.stream, facts: facts ?? [], place }, fact)) ??
      null
    if (barrier) return refused(barrier)
    const own = { stream: form.stream, length: facts?.length ?? 0 }
    return desk.append([fact], [...(form.heads ?? (spec.observation ? [] : [own])), ...beside])
  })
}
