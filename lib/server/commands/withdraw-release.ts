import * as z from 'zod'
import { StreamId, streamKind } from '@/lib/domain/facts/fact'
import { REPAIR_BODIES } from '@/lib/domain/facts/repair-bodies'
import { mayWithdraw } from '@/lib/domain/fold/may-release'
import { refused } from '@/lib/domain/result'
import { command } from './command'
import { decidingActor, decisionGround } from './decision-ground'
import { misdated } from './device-decision'
import { DeviceDecisionEntry } from './entry'
import { keptBefore } from './kept-before'
import { refusedBy } from './refusal-of'

const WithdrawRelease = z.strictObject({
  stream: StreamId.refine((id) => streamKind(id) === 'repair', 'a repair'),
  body: REPAIR_BODIES['release-withdrawn'],
  ...DeviceDecisionEntry,
})

/**
 * Withdraw a release, now or at the stated time on a device, with cause and reason; its history stays readable: `{ stream, body: { release, cause, reason, followsFrom? } }`. Whoever may release
 * for its party may withdraw it, or an inspector. Refuses `invalid`, `not-found`, `not-allowed`, `not-decided` (`release-fallen`), `decision-misdated`, `heads-moved`.
 */
export const withdrawRelease = command(WithdrawRelease, async (desk, form) => {
  const ground = await decisionGround(desk, form.stream, 'withdraw release', form.observedAt)
  if (!ground.ok) return ground
  const { kept, place, state } = ground.value
  const fact = desk.make({
    stream: form.stream,
    kind: 'release-withdrawn',
    body: form.body,
    entry: form,
    offset: place.offset,
  })
  const again = keptBefore(fact, kept.facts)
  if (again) return again
  const wrongTime = misdated(desk, fact, kept.facts)
  if (wrongTime) return refused(wrongTime)
  const allowed = mayWithdraw(state, form.body.release, decidingActor(desk, place))
  if (!allowed.ok)
    return allowed.error.code === 'release-unknown'
      ? refused({ code: 'not-found' })
      : refusedBy('withdraw release', allowed.error)
  return desk.append([fact], form.observedAt ? [] : [{ stream: form.stream, length: kept.facts.length }])
})
