import * as z from 'zod'
import { StreamId, streamKind } from '@/lib/domain/facts/fact'
import { foldBatch } from '@/lib/domain/fold/fold-batch'
import { foldInstrument } from '@/lib/domain/fold/fold-instrument'
import { mayLiftQuarantine } from '@/lib/domain/fold/may-correct'
import { refused } from '@/lib/domain/result'
import { authorise } from './authorise'
import { command } from './command'
import { decidingActor } from './decision-ground'
import { Entry } from './entry'
import { identifySigner, Signer } from './identify-signer'
import { refusedBy } from './refusal-of'

const LiftQuarantine = z.strictObject({
  stream: StreamId.refine((id) => ['batch', 'instrument'].includes(streamKind(id)), 'a batch or an instrument'),
  reason: z.string().trim().min(3).max(600),
  second: Signer,
  ...Entry,
})

/**
 * Lift the quarantine of a batch or an instrument together with a second person, who confirms with a password: `{ stream, reason, second, ...Entry }`.
 * Refuses `invalid`, `not-found`, `not-allowed` (either person), `second-person-missing`, `not-decided` (`not-quarantined`, `recalled`), and as `identifySigner`.
 */
export const liftQuarantine = command(LiftQuarantine, async (desk, form) => {
  const facts = await desk.factsOf(form.stream)
  if (!facts) return refused({ code: 'not-found' })
  const barred = authorise(desk.actor, 'any', desk.today(null), 'lift quarantine')
  if (barred) return refused(barred)
  const state =
    streamKind(form.stream) === 'batch'
      ? foldBatch(facts, form.stream, desk.now(null))
      : foldInstrument(facts, form.stream, desk.now(null))
  if (!state) return refused({ code: 'not-found' })
  if (form.second.person === desk.actor.person || form.second.by !== 'password')
    return refused({ code: 'second-person-missing' })
  const allowed = mayLiftQuarantine(state, decidingActor(desk, { project: 'any', offset: null }), form.second.person)
  if (!allowed.ok) return refusedBy('lift quarantine', allowed.error)
  const second = await identifySigner(desk, form.second)
  if (!second.ok) return second
  const secondBarred = authorise(second.value.signer, 'any', desk.today(null), 'lift quarantine')
  if (secondBarred) return refused(secondBarred)
  const body = { reason: form.reason, second: second.value.signer.person }
  const fact = desk.make({ stream: form.stream, kind: 'quarantine-lifted', body, entry: form, offset: null })
  return desk.append([fact], form.heads ?? [{ stream: form.stream, length: facts.length }])
})
