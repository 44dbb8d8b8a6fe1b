import * as z from 'zod'
import { StreamId, streamKind } from '@/lib/domain/facts/fact'
import { REPAIR_BODIES } from '@/lib/domain/facts/repair-bodies'
import { currentAttempt } from '@/lib/domain/fold/decision'
import { refused } from '@/lib/domain/result'
import { releaseActOf } from './authorise'
import { command } from './command'
import { decisionGround, namesOwnHead } from './decision-ground'
import { misdated } from './device-decision'
import { DeviceDecisionEntry } from './entry'
import { keptBefore } from './kept-before'
import { refusedBy } from './refusal-of'

const RefuseRelease = z.strictObject({
  stream: StreamId.refine((id) => streamKind(id) === 'repair', 'a repair'),
  body: REPAIR_BODIES['release-refused'],
  ...DeviceDecisionEntry,
})

/**
 * Refuse to release a submitted attempt for a party that holds it, now or at the stated time on a device, with the reason: `{ stream, body: { point, attempt, party, reason, heads } }`.
 * Refuses `invalid`, `not-found`, `not-allowed`, `not-decided` (`not-a-hold`, `not-submitted`, another attempt than the current), `decision-misdated`, `heads-moved`.
 */
export const refuseRelease = command(RefuseRelease, async (desk, form) => {
  const act = releaseActOf(form.body.party)
  const ground = await decisionGround(desk, form.stream, act, form.observedAt)
  if (!ground.ok) return ground
  const { kept, place, state } = ground.value
  const fact = desk.make({
    stream: form.stream,
    kind: 'release-refused',
    body: form.body,
    entry: form,
    offset: place.offset,
  })
  const again = keptBefore(fact, kept.facts)
  if (again) return again
  const wrongTime = misdated(desk, fact, kept.facts)
  if (wrongTime) return refused(wrongTime)
  const found = currentAttempt(state, form.body.point, form.body.attempt)
  if ('code' in found) return refusedBy(act, found)
  if (found.point.participation[form.body.party] !== 'H') return refusedBy(act, { code: 'not-a-hold' })
  if (!found.current.submitted) return refusedBy(act, { code: 'not-submitted' })
  const unnamed = namesOwnHead(form.body.heads, form.stream)
  return unnamed ? refused(unnamed) : desk.append([fact], form.observedAt ? [] : form.body.heads)
})
