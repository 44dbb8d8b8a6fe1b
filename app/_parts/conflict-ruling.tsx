import type { ReactNode } from 'react'
import { shortDevice } from '@/app/_ui/short-device'
import type { PersonId } from '@/lib/domain/facts/fact'
import { CONFLICT_FACTS_AT_MOST } from '@/lib/domain/facts/project-bodies'
import type { ConflictView, NamedFact } from '@/lib/domain/fold/conflict-view'
import { showMoment } from '@/lib/domain/time'
/** A decision made without a network and the facts that it did not know; an inspector rules on it. */
export function ConflictRuling({
  view: { conflict, decision, facts },
  names,
  children,
}: {
  view: ConflictView
  names: Record<PersonId, string>
  /** How it is ruled on, for who may. */
  children: ReactNode
}) {
  return (
    <section className="note question-note">
      <strong>
        {decision
          ? 'A decision made without a network did not know all of the record'
          : 'A decision made without a network was not applied'}
      </strong>
      {decision ? (
        <dl className="pairs">
          <dt>Decided</dt>
          <dd>
            {decision.words}, {decision.place}
          </dd>
          <dt>By</dt>
          <dd>
            {names[decision.by] ?? decision.by}, {showMoment(decision.at)}, device {shortDevice(decision.device)}
          </dd>
        </dl>
      ) : (
        <span>{conflict.text}</span>
      )}
      {facts.length > 0 ? (
        <>
          <span>
            {decision ? 'It did not know' : 'In the record meanwhile'}
            {facts.length >= CONFLICT_FACTS_AT_MOST - 1 ? ', and perhaps more' : ''}:
          </span>
          <ul className="plain-list">
            {facts.map((one) => (
              <FactLine key={one.id} fact={one} names={names} />
            ))}
          </ul>
        </>
      ) : null}
      {decision ? <span>Until the ruling the decision stands in question: no work goes on under it.</span> : null}
      {children ?? <span>An inspector rules on it.</span>}
    </section>
  )
}

function FactLine({ fact, names }: { fact: NamedFact; names: Record<PersonId, string> }) {
  return (
    <li>
      {fact.words}
      <br />
      <span className="quiet small">
        {fact.place ? `${fact.place}, ` : ''}
        {names[fact.by] ?? fact.by}, {showMoment(fact.at)}, device {shortDevice(fact.device)}
      </span>
    </li>
  )
}
