import Link from 'next/link'
import { AttemptMark } from '@/app/_ui/attempt-mark'
import { Letters } from '@/app/_ui/letters'
import { VerdictMark } from '@/app/_ui/verdict-mark'
import type { PointView } from '@/lib/server/views/point-view'

/** States in which an earlier hold still matters to this attempt. */
const UNDER_WAY = new Set(['closed', 'open', 'in progress', 'submitted', 'refused', 'lapsed', 'withdrawn'])

/** Which point of which repair, its attempts, its verdict and what blocks it. */
export function PointHead({ view, base }: { view: PointView; base: string }) {
  const { state, point, attempt } = view
  return (
    <>
      <div className="page-head">
        <div>
          <p className="eyebrow">
            <Link href={`/repairs/${encodeURIComponent(state.number)}`}>‹ {state.number}</Link> · point {point.no} ·
            attempt {attempt.attempt} of {point.attempts.length}
          </p>
          <h1>{point.plan.title}</h1>
          <div className="row" style={{ marginTop: 10 }}>
            <Letters participation={point.participation} />
            <span className="quiet small">crew, inspector, client, engineer</span>
          </div>
        </div>
        <div className="stack tight head-state">
          {attempt.records.length > 0 ? (
            <VerdictMark verdict={attempt.verdict} conceded={attempt.conceded !== null} />
          ) : null}
          <AttemptMark state={attempt.state} />
        </div>
      </div>
      <div className="stack" style={{ marginBottom: 20 }}>
        {point.attempts.length > 1 ? (
          <nav className="row" aria-label="Attempts">
            {point.attempts.map((one) => (
              <Link
                key={one.attempt}
                className="button plain"
                aria-current={one === attempt ? 'page' : undefined}
                href={`${base}?attempt=${one.attempt}`}
              >
                Attempt {one.attempt}: {one.state}
              </Link>
            ))}
          </nav>
        ) : null}
        {point.blockedBy.length > 0 && attempt === point.current && UNDER_WAY.has(attempt.state) ? (
          <p className="note warn">
            <strong>
              Closed: {point.blockedBy.length === 1 ? 'point' : 'points'} {point.blockedBy.join(', ')}{' '}
              {point.blockedBy.length === 1 ? 'is' : 'are'} not released and valid.
            </strong>
            <span>What is observed all the same is kept, with a finding.</span>
          </p>
        ) : null}
        {attempt.passedWithoutRelease.map((one) => (
          <p key={one.by} className="note refused">
            <strong>Work went on past hold {one.hold} without release.</strong>
            <span>It cannot be released afterwards. Raise a nonconformance; the engineer decides.</span>
          </p>
        ))}
        {attempt.questions.filter((one) => !one.decision).length > 0 ? (
          <p className="note question-note">
            <strong>In question.</strong>
            <span>
              The basis of a result is doubted:{' '}
              {[
                ...new Set(
                  attempt.questions
                    .filter((one) => !one.decision)
                    .map((one) => `${one.causeKind} (${one.stream.replace(':', ' ')})`),
                ),
              ].join('; ')}
              . It is neither failed nor passed until a person decides.
            </span>
          </p>
        ) : null}
        {point.plan.hazards.length > 0 ? (
          <details className="note warn">
            <summary className="fold-head">
              <strong>Hazards at this point</strong>
            </summary>
            {point.plan.hazards.map((hazard) => (
              <span key={hazard}>{hazard}</span>
            ))}
          </details>
        ) : null}
      </div>
    </>
  )
}
