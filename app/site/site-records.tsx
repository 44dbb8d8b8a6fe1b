import { NotSent } from '@/app/_parts/not-sent'
import { RecordValues } from '@/app/_parts/record-values'
import { FORMS } from '@/lib/capture/forms/form-table'
import { siteHref } from '@/lib/capture/site/site-address'
import type { SitePack } from '@/lib/domain/capture/site-pack'
import type { FactId, PersonId } from '@/lib/domain/facts/fact'
import { correctionWords } from '@/lib/domain/fold/correction-words'
import type { AttemptState } from '@/lib/domain/fold/repair-state'
import { showMoment } from '@/lib/domain/time'

/** What is recorded in an attempt, with its corrections; what is on this device alone is marked. */
export function SiteRecords({
  pack,
  attempt,
  names,
  unsent,
}: {
  pack: SitePack
  attempt: AttemptState
  names: Record<PersonId, string>
  unsent: ReadonlySet<FactId>
}) {
  if (attempt.records.length === 0) return <p className="quiet">Nothing is recorded yet.</p>
  const nameOf = (person: PersonId) => names[person] ?? person
  return (
    <div className="stack">
      {attempt.records.map(({ fact, record, corrections, late }) => (
        <article key={fact.id} className="group" id={fact.id}>
          <div className="row between">
            <h3>{FORMS[record.type].title}</h3>
            <span className="quiet small">
              {showMoment(fact.observedAt)}, {nameOf(fact.observedBy)}
            </span>
          </div>
          {unsent.has(fact.id) ? <NotSent /> : null}
          {late ? <p className="note warn">Late entry, entered {showMoment(fact.enteredAt)}.</p> : null}
          <RecordValues record={record} names={names} />
          {corrections.map((correction) => (
            <div key={correction.id} className="note">
              <strong>
                Corrected {showMoment(correction.observedAt)} by {nameOf(correction.enteredBy)}
              </strong>
              {unsent.has(correction.id) ? <NotSent /> : null}
              {correction.body.changes.map((change) => {
                const words = correctionWords(record, change)
                return (
                  <span key={change.path.join('.')}>
                    {words.where}: <span className="old-value">{words.from}</span> → {words.to}
                  </span>
                )
              })}
              <span>Reason: {correction.body.reason}</span>
            </div>
          ))}
          {fact.enteredBy === pack.person || fact.observedBy === pack.person ? (
            <div className="row">
              <a
                className="button plain"
                href={siteHref({
                  repair: pack.number,
                  point: attempt.point,
                  attempt: attempt.attempt,
                  correct: fact.id,
                })}
              >
                Correct an error in it
              </a>
            </div>
          ) : null}
        </article>
      ))}
    </div>
  )
}
