import { z } from 'zod'
import { StreamId, streamKind } from '@/lib/domain/facts/fact'
import { REPAIR_BODIES } from '@/lib/domain/facts/repair-bodies'
import { refused } from '@/lib/domain/result'
import { releaseActOf } from './authorise'
import { command } from './command'
import { decisionGround, notDecided } from './decision-ground'
import { DecisionEntry } from './entry'
import { keptBefore } from './kept-before'

const WithdrawRelease = z.strictObject({ stream: StreamId.refine((id) => streamKind(id) === 'repair', 'a repair'), body: REPAIR_BODIES['release-withdrawn'], ...DecisionEntry })

/**
 * Withdraw a release, now, with cause and reason; its history stays readable: `{ stream, body: { release, cause, reason, followsFrom? } }`. Whoever may release
 * for its party may withdraw it. Refuses `invalid`, `not-found`, `not-allowed`, `not-decided` (`withdrawn-already`), `heads-moved`.
 */
export const withdrawRelease = command(WithdrawRelease, async (desk, form) => {
  const facts = (await desk.factsOf(form.stream)) ?? []
  const release = facts.find((one) => one.kind === 'released' && one.id === form.body.release)
  if (release?.kind !== 'released') return refused({ code: 'not-found' })
  const ground = await decisionGround(desk, form.stream, releaseActOf(release.body.party))
  if (!ground.ok) return ground
  const { kept, place } = ground.value
  const fact = desk.make({ stream: form.stream, kind: 'release-withdrawn', body: form.body, entry: form, offset: place.offset })
  const again = keptBefore(fact, kept.facts)
  if (again) return again
  if (kept.facts.some((one) => one.kind === 'release-withdrawn' && one.body.release === form.body.release)) return refused(notDecided('withdrawn-already'))
  return desk.append([fact], [{ stream: form.stream, length: kept.facts.length }])
})
