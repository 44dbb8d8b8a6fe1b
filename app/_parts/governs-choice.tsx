import { chooseGovernsAction } from '@/app/(work)/actions/point-actions'
import type { PersonId } from '@/lib/domain/facts/fact'
import type { ConflictView } from '@/lib/domain/fold/conflict-view'
import { mayAct } from '@/lib/domain/permissions'
import type { PointView } from '@/lib/server/views/point-view'
import { ConflictRuling } from './conflict-ruling'
import { Contradiction } from './contradiction'
import { GovernsForm } from './governs-form'
import { recordChoices } from './record-choices'
import { RuledConflicts } from './ruled-conflicts'
import { SettleForm } from './settle-form'

/** What contradicts at a point: records side by side, of which an inspector says which governs; decisions made without a network, on which an inspector rules. What was ruled stays readable. */
export function GovernsChoice({ view }: { view: PointView }) {
  const { state, conflicts, names, roles } = view
  const mayRule = mayAct('choose-governing-record', roles) === 'may'
  const open = conflicts.filter((one) => !one.conflict.resolved)
  return (
    <>
      {open.map((one) =>
        one.sides.length > 0 ? (
          <ContradictionHere
            key={one.conflict.facts.join()}
            stream={state.stream}
            view={one}
            names={names}
            mayRule={mayRule}
          />
        ) : (
          <ConflictRuling key={one.conflict.noted ?? one.conflict.facts.join()} view={one} names={names}>
            {mayRule && one.conflict.noted ? (
              <SettleForm
                stream={state.stream}
                conflict={one.conflict.noted}
                isApplied={one.conflict.decision !== null}
              />
            ) : null}
          </ConflictRuling>
        ),
      )}
      <RuledConflicts conflicts={conflicts.map((one) => one.conflict)} names={names} />
    </>
  )
}

function ContradictionHere({
  stream,
  view: { conflict, sides },
  names,
  mayRule,
}: {
  stream: string
  view: ConflictView
  names: Record<PersonId, string>
  mayRule: boolean
}) {
  const [first] = sides
  return (
    <Contradiction sides={sides} names={names}>
      {mayRule && first ? (
        <GovernsForm
          stream={stream}
          point={conflict.point}
          attempt={first.fact.body.attempt}
          act={chooseGovernsAction}
          records={recordChoices(sides, names)}
        />
      ) : (
        <span>An inspector chooses which governs.</span>
      )}
    </Contradiction>
  )
}
