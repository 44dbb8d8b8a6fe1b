import Link from 'next/link'
import { notFound } from 'next/navigation'
import { EventTrail } from '@/app/_desk/event-trail'
import { NonconformanceMark } from '@/app/_desk/nonconformance-mark'
import { requireDesk, streamAt } from '@/app/_desk/require-desk'
import { streamName } from '@/lib/domain/facts/fact'
import { limitWords, loadNonconformanceView } from '@/lib/server/views/nonconformance-view'
import { NonconformanceActs } from './nonconformance-acts'
import { ProgressStrip } from './progress-strip'

export default async function NonconformancePage({ params }: { params: Promise<{ number: string }> }) {
  const reading = await requireDesk()
  const view = await loadNonconformanceView(reading, streamAt('nonconformance', (await params).number))
  if (!view) notFound()
  const { state, repair, names } = view
  const { body } = state.raised
  const point = repair?.points.find((one) => one.no === body.point)
  const today = reading.desk.today(null)
  return (
    <main className="page stack" id="main">
      <div className="page-head">
        <div>
          <p className="eyebrow">
            {repair ? (
              <>
                <Link href={`/repairs/${repair.number}`}>{repair.number}</Link>
                {point ? (
                  <>
                    ,{' '}
                    <Link href={`/repairs/${repair.number}/points/${point.no}?attempt=${body.attempt ?? 1}`}>
                      point {point.no} {point.plan.title}
                      {body.attempt ? `, attempt ${body.attempt}` : ''}
                    </Link>
                  </>
                ) : null}
              </>
            ) : (
              'no repair named'
            )}
          </p>
          <h1>
            {state.number}: {body.title}
          </h1>
        </div>
        <div className="stack tight">
          <NonconformanceMark state={state.state} />
          {state.needsApproval.length > 0 ? (
            <span className="small">waits for the approval of {state.needsApproval.join(' and ')}</span>
          ) : null}
        </div>
      </div>
      <ProgressStrip state={state} />
      {state.isOpen ? (
        <p className={`note ${state.blocksAcceptance ? 'warn' : ''}`}>
          <strong>
            {state.blocksAcceptance
              ? 'It blocks acceptance while it is open.'
              : 'Engineer and client agreed that it does not block acceptance.'}
          </strong>{' '}
          <span>
            {body.blocks.length > 0 ? `Points blocked: ${body.blocks.join(', ')}.` : 'No other point is blocked.'}
          </span>
        </p>
      ) : null}
      <div className="two wide-left">
        <div className="stack">
          <section className="sheet">
            <h2>What it is about</h2>
            <dl className="pairs">
              <dt>What and where</dt>
              <dd>{body.what}</dd>
              <dt>Required</dt>
              <dd>{body.requirement}</dd>
              <dt>Class of cause</dt>
              <dd>{body.causeClass}</dd>
              <dt>Evidence</dt>
              <dd>
                {body.evidence.length === 0
                  ? 'none attached'
                  : `${body.evidence.length} ${body.evidence.length === 1 ? 'entry' : 'entries'} of the record`}
              </dd>
              {body.linked.length > 0 ? (
                <>
                  <dt>Linked</dt>
                  <dd>{body.linked.map(streamName).join(', ')}</dd>
                </>
              ) : null}
            </dl>
          </section>
          {state.proposal ? (
            <section className="sheet">
              <h2>Disposition: {state.proposal.body.disposition}</h2>
              <p>
                {state.proposal.body.what}
                {limitWords(state.proposal.body.limits)}
              </p>
              <ul className="plain-list">
                {state.approvals.map((one) => (
                  <li key={one.id}>
                    Approved for the {one.body.party}: {names[one.observedBy] ?? one.observedBy}
                    {one.body.writing ? `, ${one.body.writing}` : ''}
                  </li>
                ))}
                {state.needsApproval.map((party) => (
                  <li key={party} className="not-proven">
                    Not yet approved for the {party}
                  </li>
                ))}
              </ul>
              {(state.proposal.body.conceded ?? []).length > 0 ? (
                <p className="note">
                  <strong>Conceded, and still fail:</strong>{' '}
                  <span>
                    {(state.proposal.body.conceded ?? [])
                      .map((one) => `point ${one.point} attempt ${one.attempt}`)
                      .join(', ')}
                    . A concession turns no fail into a pass.
                  </span>
                </p>
              ) : null}
            </section>
          ) : null}
          {state.actions.length > 0 ? (
            <section className="sheet">
              <h2>Corrective actions</h2>
              <ul className="plain-list">
                {state.actions.map(({ fact, done }) => (
                  <li key={fact.id}>
                    <strong>{fact.body.what}</strong>
                    <br />
                    <span className={done === null && fact.body.dueOn < today ? 'small fail' : 'small quiet'}>
                      {names[fact.body.owner as keyof typeof names] ?? fact.body.owner}, by {fact.body.dueOn}
                      {done
                        ? ` · done ${done.observedAt.slice(0, 10)}: ${done.body.evidence}`
                        : fact.body.dueOn < today
                          ? ' · past its day'
                          : ' · open'}
                    </span>
                  </li>
                ))}
              </ul>
            </section>
          ) : null}
          <section className="sheet">
            <h2>Who did what, when</h2>
            <EventTrail events={view.events} label={`Life of ${state.number}`} />
          </section>
        </div>
        <NonconformanceActs reading={reading} view={view} />
      </div>
    </main>
  )
}
