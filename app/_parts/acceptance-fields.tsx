'use client'
import { Choice, plainOptions } from '@/app/_ui/choice'
import { ACCEPTANCE_KINDS, type AcceptanceDraft } from './acceptance-draft'

/** What is said with an acceptance: kind, life, next inspection, restrictions, a condition. A concession stays visible; it turns no fail into a pass. */
export function AcceptanceFields({
  value,
  change,
  concessions,
  lifeFrom,
  persons,
}: {
  value: AcceptanceDraft
  change(next: AcceptanceDraft): void
  concessions: readonly string[]
  lifeFrom: string
  persons: readonly { id: string; label: string }[]
}) {
  const { condition } = value
  const changeCondition = (next: Partial<AcceptanceDraft['condition']>) =>
    change({ ...value, condition: { ...condition, ...next } })
  return (
    <>
      <Choice
        legend="Kind of acceptance"
        options={plainOptions(ACCEPTANCE_KINDS)}
        value={value.kind}
        change={(kind) => change({ ...value, kind })}
      />
      {concessions.length > 0 ? (
        <p className="note warn">
          Conceded under {concessions.map((one) => one.replace('nonconformance:', '')).join(', ')}: the result stays
          fail.
        </p>
      ) : null}
      <div className="fields">
        <label className="field">
          <span className="label">Life, years</span>
          <input
            inputMode="decimal"
            value={value.life}
            onChange={(event) => change({ ...value, life: event.target.value })}
          />
        </label>
        <label className="field">
          <span className="label">Life counts from ({lifeFrom})</span>
          <input type="date" value={value.from} onChange={(event) => change({ ...value, from: event.target.value })} />
        </label>
        <label className="field">
          <span className="label">Next inspection</span>
          <input type="date" value={value.next} onChange={(event) => change({ ...value, next: event.target.value })} />
        </label>
      </div>
      <label className="field">
        <span className="label">Restrictions, one line each</span>
        <textarea
          value={value.restrictions}
          onChange={(event) => change({ ...value, restrictions: event.target.value })}
        />
      </label>
      {value.kind === 'accepted on condition' ? (
        <fieldset className="group">
          <legend>Condition</legend>
          <label className="field">
            <span className="label">What must be done</span>
            <input value={condition.text} onChange={(event) => changeCondition({ text: event.target.value })} />
          </label>
          <label className="field">
            <span className="label">Owner</span>
            <select value={condition.owner} onChange={(event) => changeCondition({ owner: event.target.value })}>
              <option value="">Choose</option>
              {persons.map((one) => (
                <option key={one.id} value={one.id}>
                  {one.label}
                </option>
              ))}
            </select>
          </label>
          <label className="field">
            <span className="label">Due on</span>
            <input
              type="date"
              value={condition.dueOn}
              onChange={(event) => changeCondition({ dueOn: event.target.value })}
            />
          </label>
        </fieldset>
      ) : null}
    </>
  )
}
