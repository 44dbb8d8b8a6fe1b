'use client'
import { ConflictRuling } from '@/app/_parts/conflict-ruling'
import { Contradiction } from '@/app/_parts/contradiction'
import { GovernsFields } from '@/app/_parts/governs-fields'
import { OutboxRefusal } from '@/app/_parts/outbox-refusal'
import { recordChoices } from '@/app/_parts/record-choices'
import { RuledConflicts } from '@/app/_parts/ruled-conflicts'
import { SettleFields } from '@/app/_parts/settle-fields'
import { factsOfEntry } from '@/lib/capture/site/local-facts'
import type { SiteState } from '@/lib/capture/site/site-state'
import { type ConflictView, conflictView } from '@/lib/domain/fold/conflict-view'
import type { PointState } from '@/lib/domain/fold/repair-state'
import { mayAct } from '@/lib/domain/permissions'
import { type DecisionGroundHere, useSiteDecision } from './use-site-decision'

type Names = SiteState['names']

/** What contradicts at a point, as this device knows it: of two records an inspector says here which governs, and on a decision that did not know the record an inspector rules. */
export function SiteConflicts({
  ground,
  folded: { state, names, unsent },
  point,
}: {
  ground: DecisionGroundHere
  folded: SiteState
  point: PointState
}) {
  const { pack, site } = ground
  const mayRule = mayAct('choose-governing-record', pack.roles) === 'may'
  const found = state.conflicts.filter((one) => one.point === point.no)
  if (found.length === 0) return null
  const facts = new Map([...pack.facts, ...site.entries.flatMap(factsOfEntry)].map((fact) => [fact.id, fact]))
  return (
    <>
      {found
        .filter((one) => !one.resolved)
        .map((conflict) => {
          const view = conflictView(conflict, point, (id) => facts.get(id))
          const Shown = view.sides.length > 0 ? Governs : Ruling
          const key = conflict.noted ?? conflict.facts.join()
          return <Shown key={key} ground={ground} names={names} point={point} view={view} mayRule={mayRule} />
        })}
      <RuledConflicts conflicts={found} names={names} unsent={unsent} />
    </>
  )
}

type Props = { ground: DecisionGroundHere; names: Names; point: PointState; view: ConflictView; mayRule: boolean }

function Governs({ ground, names, point, view: { sides }, mayRule }: Props) {
  const { decide, refusal, isBusy } = useSiteDecision(ground)
  const attempt = sides[0]?.fact.body.attempt ?? ground.attempt.attempt
  return (
    <Contradiction sides={sides} names={names}>
      {mayRule ? (
        <GovernsFields
          point={point.no}
          attempt={attempt}
          records={recordChoices(sides, names)}
          isBusy={isBusy}
          choose={(body) => void decide('choose-governs', () => body)}
        >
          {refusal ? <OutboxRefusal refusal={refusal} /> : null}
        </GovernsFields>
      ) : (
        <span>An inspector chooses which governs.</span>
      )}
    </Contradiction>
  )
}

function Ruling({ ground, names, view, mayRule }: Props) {
  const { decide, refusal, isBusy } = useSiteDecision(ground)
  const { noted, decision } = view.conflict
  return (
    <ConflictRuling view={view} names={names}>
      {mayRule && noted ? (
        <SettleFields
          conflict={noted}
          isApplied={decision !== null}
          isBusy={isBusy}
          settle={(body) => void decide('settle-conflict', () => body)}
        >
          {refusal ? <OutboxRefusal refusal={refusal} /> : null}
        </SettleFields>
      ) : null}
    </ConflictRuling>
  )
}
