import { shortDevice } from '@/app/_ui/short-device'
import type { PersonId } from '@/lib/domain/facts/fact'
import { CONFLICT_FACTS_AT_MOST } from '@/lib/domain/facts/project-bodies'
import { showMoment } from '@/lib/domain/time'
import type { ConflictView, NamedFact } from '@/lib/server/views/conflict-view'
import { RULING_WORDS } from './ruling-words'
import { SettleForm } from './settle-form'

const RULINGS = (['decision stands', 'decision falls'] as const).map((value) => ({ value, label: RULING_WORDS[value] }))
const SEEN = [{ value: 'seen', label: RULING_WORDS.seen }] as const

/** A decision made without a network and the facts that it did not know; an inspector rules on it. */
export function ConflictRuling({
  stream,
  view: { conflict, decision, facts },
  names,
  mayRule,
}: {
  stream: string
  view: ConflictView
  names: Record<PersonId, string>
  mayRule: boolean
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
      {mayRule && conflict.noted ? (
        <SettleForm stream={stream} conflict={conflict.noted} rulings={decision ? RULINGS : SEEN} />
      ) : (
        <span>An inspector rules on it.</span>
      )}
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
