import { chooseGovernsAction } from '@/app/(work)/actions/point-actions'
import type { PersonId } from '@/lib/domain/facts/fact'
import { mayAct } from '@/lib/domain/permissions'
import { showMoment } from '@/lib/domain/time'
import type { ConflictView } from '@/lib/server/views/conflict-view'
import type { PointView } from '@/lib/server/views/point-view'
import { ConflictRuling } from './conflict-ruling'
import { Contradiction } from './contradiction'
import { GovernsForm } from './governs-form'
import { recordChoices } from './record-choices'
import { RULING_WORDS } from './ruling-words'

/** What contradicts at a point: records side by side, of which an inspector says which governs; decisions made without a network, on which an inspector rules. What was ruled stays readable. */
export function GovernsChoice({ view }: { view: PointView }) {
  const { state, conflicts, names, roles } = view
  const mayRule = mayAct('choose-governing-record', roles) === 'may'
  const open = conflicts.filter((one) => !one.conflict.resolved)
  const ruled = conflicts.filter((one) => one.conflict.resolved)
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
          <ConflictRuling
            key={one.conflict.noted ?? one.conflict.facts.join()}
            stream={state.stream}
            view={one}
            names={names}
            mayRule={mayRule}
          />
        ),
      )}
      {ruled.length > 0 ? (
        <section className="sheet">
          <h2>Conflicts, ruled on</h2>
          <ul className="plain-list">
            {ruled.map(({ conflict: { facts, noted, text, resolved } }) =>
              resolved ? (
                <li key={noted ?? facts.join()}>
                  {text}.
                  <br />
                  <strong>
                    {resolved.kind === 'conflict-settled'
                      ? RULING_WORDS[resolved.body.ruling]
                      : 'One record governs, all are kept'}
                  </strong>
                  : {resolved.body.reason}
                  <br />
                  <span className="quiet small">
                    {names[resolved.observedBy] ?? resolved.observedBy}, {showMoment(resolved.observedAt)}
                  </span>
                </li>
              ) : null,
            )}
          </ul>
        </section>
      ) : null}
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
