import type { Party } from '../roles'
import { PARTIES } from '../roles'
import type { PointNo } from '../specification'
import { ofKind } from './order-facts'
import type { RepairGround } from './repair-ground'
import type { PointState } from './repair-state'

/**
 * Witness points at which work was recorded and a party neither signed "witnessed" nor attended, gave its right up in writing, nor was waited
 * for after notice.
 */
export function missingWitnesses(
  ground: RepairGround,
  points: readonly PointState[],
): { point: PointNo; text: string }[] {
  const notices = ofKind(ground.own, 'notice-sent')
  const answers = ofKind(ground.own, 'notice-answered')
  return points.flatMap((point) => {
    if (point.current.records.length === 0) return []
    return PARTIES.filter((party) => point.participation[party] === 'W' && !isAnswered(party)).map((party) => ({
      point: point.no,
      text: `Witness point of ${party}: no signature and no notice with its outcome.`,
    }))

    function isAnswered(party: Party): boolean {
      if (
        point.attempts.some((one) =>
          one.signatures.some(({ fact }) => fact.body.party === party && fact.body.meaning === 'witnessed'),
        )
      )
        return true
      if (ofKind(ground.own, 'waived').some((one) => one.body.point === point.no && one.body.party === party))
        return true
      const sent = new Set(
        notices.filter((one) => one.body.point === point.no && one.body.party === party).map((one) => one.id),
      )
      return answers.some((one) => sent.has(one.body.notice) && one.body.outcome !== 'postponed')
    }
  })
}
