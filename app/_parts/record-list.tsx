import type { ReactNode } from 'react'
import { PaperNote } from '@/app/_tally/paper-note'
import { FORMS } from '@/lib/capture/forms/form-table'
import type { FactId, PersonId } from '@/lib/domain/facts/fact'
import { correctionWords } from '@/lib/domain/fold/correction-words'
import type { AttemptState } from '@/lib/domain/fold/repair-state'
import { showMoment } from '@/lib/domain/time'
import { NotSent } from './not-sent'
import { RecordValues } from './record-values'

const ALL_SENT: ReadonlySet<FactId> = new Set()

/**
 * What was recorded in an attempt: each entry as it stands, its corrections beside it with the old value readable. `correct` draws the way to correct an own entry;
 * what is on this device alone (`unsent`) is marked.
 */
export function RecordList({
  attempt,
  names,
  me,
  correct,
  unsent = ALL_SENT,
  check,
}: {
  attempt: AttemptState
  names: Record<PersonId, string>
  me: PersonId
  correct: (fact: FactId) => ReactNode
  unsent?: ReadonlySet<FactId>
  /** Draws the way to compare a copy from paper with its scan. */
  check?: (fact: FactId) => ReactNode
}) {
  if (attempt.records.length === 0) return <p className="quiet">Nothing is recorded yet.</p>
  return (
    <div className="stack">
      {attempt.records.map(({ fact, record, corrections, overruledBy, late, signedBy, transcription }) => (
        <article key={fact.id} className="group" id={fact.id}>
          <div className="row between">
            <h3>{FORMS[record.type].title}</h3>
            <span className="quiet small">
              {showMoment(fact.observedAt)}, {names[fact.observedBy] ?? fact.observedBy}
            </span>
          </div>
          {unsent.has(fact.id) ? <NotSent /> : null}
          {overruledBy ? <p className="note">Another record governs over this one. It stays as it was taken.</p> : null}
          {late ? (
            <p className="note warn">
              <strong>Late entry</strong>
              <span>
                Entered {showMoment(fact.enteredAt)} by {names[fact.enteredBy] ?? fact.enteredBy}
                {fact.late ? `, from ${fact.late.source}: ${fact.late.reason}` : ''}
              </span>
            </p>
          ) : null}
          <PaperNote copy={{ fact, transcription }} names={names} />
          <RecordValues record={record} names={names} />
          {corrections.map((correction) => (
            <div key={correction.id} className="note">
              <strong>
                Corrected {showMoment(correction.observedAt)} by {names[correction.enteredBy] ?? correction.enteredBy}
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
          <div className="row between">
            <span className="quiet small">
              {signedBy.length === 0
                ? 'not signed'
                : `covered by ${signedBy.length} ${signedBy.length === 1 ? 'signature' : 'signatures'}`}
            </span>
            {transcription && transcription.state !== 'agrees' && check ? check(fact.id) : null}
            {fact.enteredBy === me || fact.observedBy === me ? correct(fact.id) : null}
          </div>
        </article>
      ))}
    </div>
  )
}
