import { z } from 'zod'
import { StreamId, streamKind } from '@/lib/domain/facts/fact'
import { REPAIR_BODIES } from '@/lib/domain/facts/repair-bodies'
import { refused } from '@/lib/domain/result'
import { command } from './command'
import { currentAttempt, decisionGround, namesOwnHead, notDecided } from './decision-ground'
import { DecisionEntry } from './entry'
import { keptBefore } from './kept-before'
import { submissionLacks } from './submission-lacks'

const SubmitPoint = z.strictObject({ stream: StreamId.refine((id) => streamKind(id) === 'repair', 'a repair'), body: REPAIR_BODIES.submitted, ...DecisionEntry })

/**
 * Submit an attempt for release, now: `{ stream, body: { point, attempt, heads } }`. Refuses `invalid`, `not-found`, `not-allowed`, `no-such-attempt`,
 * `not-decided` (`incomplete` with what the plan asks for and is missing, `attempt-is-over`), `heads-moved`.
 */
export const submitPoint = command(SubmitPoint, async (desk, form) => {
  const ground = await decisionGround(desk, form.stream, 'submit')
  if (!ground.ok) return ground
  const { kept, place, state } = ground.value
  const fact = desk.make({ stream: form.stream, kind: 'submitted', body: form.body, entry: form, offset: place.offset })
  const again = keptBefore(fact, kept.facts)
  if (again) return again
  const at = currentAttempt(state, form.body.point, form.body.attempt)
  if (!at.ok) return at
  const { point, current } = at.value
  if (current.state === 'not applicable') return refused(notDecided('attempt-is-over', [current.state]))
  const lacks = submissionLacks(current, point.plan)
  if (lacks.length > 0) return refused(notDecided('incomplete', lacks))
  const unnamed = namesOwnHead(form.body.heads, form.stream)
  return unnamed ? refused(unnamed) : desk.append([fact], form.body.heads)
})
