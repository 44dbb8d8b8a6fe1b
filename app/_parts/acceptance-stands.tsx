import type { FactId, PersonId } from '@/lib/domain/facts/fact'
import type { AcceptanceState } from '@/lib/domain/fold/repair-state'
import { showMoment } from '@/lib/domain/time'

const NONE: ReadonlySet<FactId> = new Set()

/** An acceptance as it stands: its kind, life, restrictions and conditions, and who signed it. `unsent` are facts that are on this device alone. */
export function AcceptanceStands({
  acceptance: { fact, signatures, lifeYears, lifeEndsOn, nextInspectionOn },
  names,
  unsent = NONE,
}: {
  acceptance: AcceptanceState
  names: Record<PersonId, string>
  unsent?: ReadonlySet<FactId>
}) {
  const { kind, lifeFrom, restrictions, conditions } = fact.body
  return (
    <>
      <p>
        {kind}, {showMoment(fact.observedAt)}, {names[fact.observedBy] ?? fact.observedBy}. Life {lifeYears} yr from{' '}
        {lifeFrom}, ends {lifeEndsOn}; next inspection {nextInspectionOn}.
      </p>
      <ul className="plain-list">
        {restrictions.map((one) => (
          <li key={one}>Restriction: {one}</li>
        ))}
        {conditions.map((one) => (
          <li key={one.text}>
            Condition, due {one.dueOn}: {one.text}
          </li>
        ))}
        {signatures.map((one) => (
          <li key={one.fact.id}>
            {one.fact.body.meaning}: {one.fact.body.name}, {one.fact.body.role}, {showMoment(one.fact.observedAt)}
            {unsent.has(one.fact.id) ? ' · Not yet sent' : ''}
          </li>
        ))}
      </ul>
    </>
  )
}
