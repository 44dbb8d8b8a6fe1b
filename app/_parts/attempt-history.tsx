import { Glyph } from '@/app/_ui/glyph'
import { showMoment } from '@/lib/domain/time'
import type { PointView } from '@/lib/server/views/point-view'

/** Signatures, releases and refusals of an attempt; what fell stays readable with its cause. */
export function AttemptHistory({ view }: { view: PointView }) {
  const { attempt, names } = view
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
            {name(attempt.opened.observedBy)}
            <br />
            <span className="quiet">{attempt.opened.body.reason}</span>
          </li>
        ) : null}
        {attempt.notApplicable ? (
          <li>
            <strong>Not applicable</strong> {showMoment(attempt.notApplicable.observedAt)},{' '}
            {name(attempt.notApplicable.observedBy)}
            <br />
            <span className="quiet">{attempt.notApplicable.body.reason}</span>
          </li>
        ) : null}
        {attempt.signatures.map(({ fact, state }) => (
          <li key={fact.id}>
            <strong>{fact.body.meaning}</strong>: {fact.body.name}, {fact.body.role}, {showMoment(fact.observedAt)}
            <br />
            <span className="quiet small">
              covers {fact.body.covers.length} {fact.body.covers.length === 1 ? 'entry' : 'entries'}; by{' '}
              {fact.body.method.kind}
              {fact.body.method.kind === 'in person' ? `, witness ${name(fact.body.method.witness)}` : ''}
            </span>
            {state === 'broken' ? (
              <>
                <br />
                <span className="mark fail">
                  <Glyph name="fail" />A correction since is not covered: sign again
                </span>
              </>
            ) : null}
          </li>
        ))}
        {attempt.submitted ? (
          <li>
            <strong>Submitted</strong> {showMoment(attempt.submitted.observedAt)}, {name(attempt.submitted.observedBy)}
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
            <span className="quiet">{fact.body.reason}</span>
          </li>
        ))}
        {attempt.releases.map(({ fact, state, fell, receivedAfterUse }) => (
          <li key={fact.id}>
            <strong>Released</strong> for {fact.body.party} {showMoment(fact.observedAt)}, {name(fact.observedBy)}
            {fact.body.scope.kind === 'area'
              ? `, for ${fact.body.scope.area} only`
              : fact.body.scope.kind === 'up-to-step'
                ? `, up to ${fact.body.scope.step}`
                : ''}
            {state === 'used' ? (
              <>
                <br />
                <span className="quiet small">used in time</span>
              </>
            ) : null}
            {fell ? (
              <>
                <br />
                <span className="mark lapsed">
                  <Glyph name="lapsed" />
                  then {state} at {showMoment(fell.at)}
                </span>{' '}
                <span className="quiet">
                  {fell.cause}
                  {fell.by ? `, ${name(fell.by)}` : ''}
                </span>
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
