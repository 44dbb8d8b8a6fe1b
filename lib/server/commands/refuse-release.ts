import { z } from 'zod'
import { StreamId, streamKind } from '@/lib/domain/facts/fact'
import { REPAIR_BODIES } from '@/lib/domain/facts/repair-bodies'
import { refused } from '@/lib/domain/result'
import { releaseActOf } from './authorise'
import { command } from './command'
import { currentAttempt, decisionGround, namesOwnHead, notDecided } from './decision-ground'
import { DecisionEntry } from './entry'
import { keptBefore } from './kept-before'

const RefuseRelease = z.strictObject({ stream: StreamId.refine((id) => streamKind(id) === 'repair', 'a repair'), body: REPAIR_BODIES['release-refused'], ...DecisionEntry })

/**
 * Refuse to release a submitted attempt for a party that holds it, now, with the reason: `{ stream, body: { point, attempt, party, reason, heads } }`.
 * Refuses `invalid`, `not-found`, `not-allowed`, `no-such-attempt`, `not-decided` (`party-holds-no-such-point`, `not-submitted`), `heads-moved`.
 */
export const refuseRelease = command(RefuseRelease, async (desk, form) => {
  const ground = await decisionGround(desk, form.stream, releaseActOf(form.body.party))
  if (!ground.ok) return ground
  const { kept, place, state } = ground.value
  const fact = desk.make({ stream: form.stream, kind: 'release-refused', body: form.body, entry: form, offset: place.offset })
  const again = keptBefore(fact, kept.facts)
  if (again) return again
  const at = currentAttempt(state, form.body.point, form.body.attempt)
  if (!at.ok) return at
  if (at.value.point.participation[form.body.party] !== 'H') return refused(notDecided('party-holds-no-such-point'))
  if (!at.value.current.submitted) return refused(notDecided('not-submitted'))
  const unnamed = namesOwnHead(form.body.heads, form.stream)
  return unnamed ? refused(unnamed) : desk.append([fact], form.body.heads)
})
