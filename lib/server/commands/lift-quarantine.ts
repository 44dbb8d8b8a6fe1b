import { z } from 'zod'
import { StreamId, streamKind } from '@/lib/domain/facts/fact'
import { foldBatch } from '@/lib/domain/fold/fold-batch'
import { foldInstrument } from '@/lib/domain/fold/fold-instrument'
import { refused } from '@/lib/domain/result'
import { authorise } from './authorise'
import { command } from './command'
import { Entry } from './entry'
import { identifySigner, Signer } from './identify-signer'

const LiftQuarantine = z.strictObject({
  stream: StreamId.refine((id) => ['batch', 'instrument'].includes(streamKind(id)), 'a batch or an instrument'),
  reason: z.string().trim().min(3).max(600),
  second: Signer,
  ...Entry,
})

/**
 * Lift the quarantine of a batch or an instrument together with a second person, who confirms with a password: `{ stream, reason, second, ...Entry }`.
 * Refuses `invalid`, `not-found`, `not-allowed` (either person), `second-person-missing`, `not-decided` (`not-in-quarantine`), and as `identifySigner`.
 */
export const liftQuarantine = command(LiftQuarantine, async (desk, form) => {
  const facts = await desk.factsOf(form.stream)
  if (!facts) return refused({ code: 'not-found' })
  const barred = authorise(desk.actor, 'any', desk.today(null), 'lift quarantine')
  if (barred) return refused(barred)
  const state = streamKind(form.stream) === 'batch' ? foldBatch(facts, form.stream, desk.now(null)) : foldInstrument(facts, form.stream, desk.now(null))
  if (!state?.isQuarantined) return refused({ code: 'not-decided', why: 'not-in-quarantine', detail: [] })
  if (form.second.person === desk.actor.person || form.second.by !== 'password') return refused({ code: 'second-person-missing' })
  const second = await identifySigner(desk, form.second)
  if (!second.ok) return second
  const secondBarred = authorise(second.value.signer, 'any', desk.today(null), 'lift quarantine')
  if (secondBarred) return refused(secondBarred)
  const body = { reason: form.reason, second: second.value.signer.person }
  const fact = desk.make({ stream: form.stream, kind: 'quarantine-lifted', body, entry: form, offset: null })
  return desk.append([fact], form.heads ?? [{ stream: form.stream, length: facts.length }])
})
