'use client'
import { Contradiction } from '@/app/_parts/contradiction'
import { GovernsFields } from '@/app/_parts/governs-fields'
import { OutboxRefusal } from '@/app/_parts/outbox-refusal'
import { recordChoices } from '@/app/_parts/record-choices'
import type { SiteState } from '@/lib/capture/site/site-state'
import { conflictSides } from '@/lib/domain/fold/conflict-sides'
import type { PointState, RecordState } from '@/lib/domain/fold/repair-state'
import { mayAct } from '@/lib/domain/permissions'
import { type DecisionGroundHere, useSiteDecision } from './use-site-decision'

type Props = { ground: DecisionGroundHere; folded: SiteState; point: PointState }

/** What contradicts at a point, as this device knows it: of two records an inspector says here which governs; what concerns a decision is ruled on where there is a network. */
export function SiteConflicts({ ground, folded, point }: Props) {
  const mayRule = mayAct('choose-governing-record', ground.pack.roles) === 'may'
  return folded.state.conflicts
    .filter((one) => one.point === point.no && !one.resolved)
    .map((one) => {
      const sides = conflictSides(one, point)
      const key = one.noted ?? one.facts.join()
      return sides.length > 1 && mayRule ? (
        <ContradictionHere key={key} ground={ground} names={folded.names} point={point} sides={sides} />
      ) : (
        <div key={key} className="note question-note">
          <strong>A conflict waits for a ruling here.</strong>
          <span>{one.text}</span>
          <span>
            {sides.length > 1
              ? 'All of it is kept. An inspector chooses which governs.'
              : 'All of it is kept. An inspector rules on it in the record, where there is a network.'}
          </span>
        </div>
      )
    })
}

function ContradictionHere({
  ground,
  names,
  point,
  sides,
}: {
  ground: DecisionGroundHere
  names: SiteState['names']
  point: PointState
  sides: readonly RecordState[]
}) {
  const { decide, refusal, isBusy } = useSiteDecision(ground)
  const attempt = sides[0]?.fact.body.attempt ?? ground.attempt.attempt
  return (
    <Contradiction sides={sides} names={names}>
      <GovernsFields
        point={point.no}
        attempt={attempt}
        records={recordChoices(sides, names)}
        isBusy={isBusy}
        choose={(body) => void decide('choose-governs', () => body)}
      >
        {refusal ? <OutboxRefusal refusal={refusal} /> : null}
      </GovernsFields>
    </Contradiction>
  )
}
