import { chooseGovernsAction } from '@/app/(work)/actions/point-actions'
import type { PersonId } from '@/lib/domain/facts/fact'
import { showMoment } from '@/lib/domain/time'
import type { ConflictView } from '@/lib/server/views/conflict-view'
import type { PointView } from '@/lib/server/views/point-view'
import { ConflictRuling } from './conflict-ruling'
import { ConflictSides } from './conflict-sides'
import { GovernsForm } from './governs-form'
import { recordChoices } from './record-choices'
import { RULING_WORDS } from './ruling-words'

/** What contradicts at a point: records side by side, of which an inspector says which governs; decisions made without a network, on which an inspector rules. What was ruled stays readable. */
export function GovernsChoice({ view }: { view: PointView }) {
  const { state, conflicts, names, roles } = view
  const mayRule = roles.includes('inspector')
  const open = conflicts.filter((one) => !one.conflict.resolved)
  const ruled = conflicts.filter((one) => one.conflict.resolved)
  return (
    <>
      {open.map((one) =>
        one.sides.length > 0 ? (
          <Contradiction
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

function Contradiction({
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
    <section className="note question-note">
      <strong>Two records contradict each other</strong>
      <span>Both stay in the record. Nothing is released here until it is said which governs.</span>
      <ConflictSides sides={sides} names={names} />
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
    </section>
  )
}
