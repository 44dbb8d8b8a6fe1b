import * as z from 'zod'
import { StreamId, streamKind } from '@/lib/domain/facts/fact'
import { REPAIR_BODIES } from '@/lib/domain/facts/repair-bodies'
import { maySubmit } from '@/lib/domain/fold/may-submit'
import { refused } from '@/lib/domain/result'
import { command } from './command'
import { decisionGround, namesOwnHead } from './decision-ground'
import { misdated } from './device-decision'
import { DeviceDecisionEntry } from './entry'
import { keptBefore } from './kept-before'
import { refusedBy } from './refusal-of'

const SubmitPoint = z.strictObject({
  stream: StreamId.refine((id) => streamKind(id) === 'repair', 'a repair'),
  body: REPAIR_BODIES.submitted,
  ...DeviceDecisionEntry,
})

/**
 * Submit an attempt for release, now, or at the stated time on a device: `{ stream, body: { point, attempt, heads } }`. Refuses `invalid`, `not-found`, `not-allowed`, `not-decided` (see `maySubmit`),
 * `decision-misdated`, `heads-moved`.
 */
export const submitPoint = command(SubmitPoint, async (desk, form) => {
  const ground = await decisionGround(desk, form.stream, 'submit', form.observedAt)
  if (!ground.ok) return ground
  const { kept, place, state } = ground.value
  const fact = desk.make({ stream: form.stream, kind: 'submitted', body: form.body, entry: form, offset: place.offset })
  const again = keptBefore(fact, kept.facts)
  if (again) return again
  const wrongTime = misdated(desk, fact, kept.facts)
  if (wrongTime) return refused(wrongTime)
  const allowed = maySubmit(state, form.body.point, form.body.attempt)
  if (!allowed.ok) return refusedBy('submit', allowed.error)
  const unnamed = namesOwnHead(form.body.heads, form.stream)
  return unnamed ? refused(unnamed) : desk.append([fact], form.observedAt ? [] : form.body.heads)
})
