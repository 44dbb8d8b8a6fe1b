import { Glyph } from '@/app/_ui/glyph'
import type { FactId, PersonId } from '@/lib/domain/facts/fact'
import type { AttemptState, SignatureState } from '@/lib/domain/fold/repair-state'
import { methodWords } from '@/lib/domain/signing/method-words'
import { showMoment } from '@/lib/domain/time'
import { NotSent } from './not-sent'

const ALL_SENT: ReadonlySet<FactId> = new Set()

/** Signatures, releases and refusals of an attempt; what fell stays readable with its cause, and what is on this device alone (`unsent`) is marked. */
export function AttemptHistory({
  view,
  unsent = ALL_SENT,
}: {
  view: { attempt: AttemptState; names: Record<PersonId, string> }
  unsent?: ReadonlySet<FactId>
}) {
  const { attempt, names } = view
  const mark = (id: FactId) => (unsent.has(id) ? <NotSent /> : null)
  const name = (id: string) => names[id as keyof typeof names] ?? id
  const isEmpty =
    attempt.signatures.length + attempt.releases.length + attempt.refusals.length === 0 &&
    !attempt.opened &&
    !attempt.notApplicable
  return (
    <section className="sheet">
      <h2>Signed, released, refused</h2>
      {isEmpty ? <p className="quiet">Nothing yet.</p> : null}
      <ul className="plain-list">
        {attempt.opened ? (
          <li>
            <strong>Attempt {attempt.attempt} opened</strong> {showMoment(attempt.opened.observedAt)},{' '}
            {name(attempt.opened.observedBy)} {mark(attempt.opened.id)}
            <br />
            <span className="quiet">{attempt.opened.body.reason}</span>
          </li>
        ) : null}
        {attempt.notApplicable ? (
          <li>
            <strong>Not applicable</strong> {showMoment(attempt.notApplicable.observedAt)},{' '}
            {name(attempt.notApplicable.observedBy)} {mark(attempt.notApplicable.id)}
            <br />
            <span className="quiet">{attempt.notApplicable.body.reason}</span>
          </li>
        ) : null}
        {attempt.signatures.map(({ fact, state, brokenBy }) => (
          <li key={fact.id}>
            <strong>{fact.body.meaning}</strong>: {fact.body.name}, {fact.body.role}, {showMoment(fact.observedAt)}
            <br />
            <span className="quiet small">
              covers {coverWords(fact.body)}; {methodWords(fact.body.method, name)}
            </span>
            {mark(fact.id)}
            {state === 'broken' ? (
              <>
                <br />
                <span className="mark fail">
                  <Glyph name="fail" />
                  {brokenWords(attempt, brokenBy)}
                </span>
              </>
            ) : null}
          </li>
        ))}
        {attempt.submitted ? (
          <li>
            <strong>Submitted</strong> {showMoment(attempt.submitted.observedAt)}, {name(attempt.submitted.observedBy)}{' '}
            {mark(attempt.submitted.id)}
          </li>
        ) : null}
        {attempt.refusals.map((fact) => (
          <li key={fact.id}>
            <span className="mark fail">
              <Glyph name="fail" />
              Release refused
            </span>{' '}
            {showMoment(fact.observedAt)}, {name(fact.observedBy)}
            <br />
            <span className="quiet">{fact.body.reason}</span> {mark(fact.id)}
          </li>
        ))}
        {attempt.releases.map(({ fact, state, fell, receivedAfterUse }) => (
          <li key={fact.id}>
            <strong>Released</strong> for {fact.body.party} {showMoment(fact.observedAt)}, {name(fact.observedBy)}
            {fact.body.scope.kind === 'area'
              ? `, for ${fact.body.scope.area} only`
              : fact.body.scope.kind === 'up-to-step'
                ? `, up to ${fact.body.scope.step}`
                : ''}{' '}
            {mark(fact.id)}
            {state === 'used' ? (
              <>
                <br />
                <span className="quiet small">used in time</span>
              </>
            ) : null}
            {fell ? (
              <>
                <br />
                <span className={`mark ${state === 'in question' ? 'question' : 'lapsed'}`}>
                  <Glyph name={state === 'in question' ? 'question' : 'lapsed'} />
                  then {state} at {showMoment(fell.at)}
                </span>{' '}
                <span className="quiet">
                  {fell.cause.replace(/\.$/, '')}
                  {fell.by ? `; ${name(fell.by)}` : ''}
                </span>{' '}
                {fell.fact ? mark(fell.fact) : null}
              </>
            ) : null}
            {receivedAfterUse ? (
              <>
                <br />
                <span className="not-proven">received after the step that relied on it</span>
              </>
            ) : null}
          </li>
        ))}
      </ul>
    </section>
  )
}

function coverWords({ covers, photos = [] }: SignatureState['fact']['body']): string {
  const entries = `${covers.length} ${covers.length === 1 ? 'entry' : 'entries'}`
  return photos.length === 0
    ? entries
    : `${entries} and ${photos.length} ${photos.length === 1 ? 'photo' : 'photos'} of the device`
}

/** Why a signature no longer stands. */
function brokenWords({ records }: AttemptState, brokenBy: FactId | null): string {
  return records.some((one) => one.corrections.some((correction) => correction.id === brokenBy))
    ? 'A correction since is not covered: sign again'
    : brokenBy === null
      ? 'What it signed, or whose key it was, does not agree with the record: sign again'
      : 'The key of that device had been ended: sign again'
}
