import Link from 'next/link'
import { notFound, redirect } from 'next/navigation'
import { AnswerNotice } from '@/app/_parts/answer-notice'
import { SendNotice } from '@/app/_parts/send-notice'
import { WaiveHold } from '@/app/_parts/waive-hold'
import { showDecimal } from '@/lib/domain/decimal'
import { showMoment } from '@/lib/domain/time'
import { loadPointView } from '@/lib/server/views/point-view'
import { openReadingDesk } from '@/lib/server/views/reading-desk'
import { loadRepairView } from '@/lib/server/views/repair-view'

export const metadata = { title: 'Notices and waivers' }

export default async function NoticesPage({ params }: { params: Promise<{ number: string }> }) {
  const reading = await openReadingDesk()
  if (!reading) redirect('/sign-in')
  const number = decodeURIComponent((await params).number)
  const view = await loadRepairView(reading, number)
  if (!view) notFound()
  const { state, names } = view
  const first = state.points[0]
  const detail = first ? await loadPointView(reading, number, first.no, null) : null
  const spec = state.specification?.body
  const mayNotify = view.roles.some((role) => role === 'lead' || role === 'inspector')
  return (
    <main className="page narrow" id="main">
      <div className="page-head">
        <div>
          <p className="eyebrow">
            <Link href={`/repairs/${encodeURIComponent(number)}`}>‹ {number}</Link>
          </p>
          <h1>Notices and waivers</h1>
        </div>
        {spec ? (
          <p className="quiet">
            Witness notice {showDecimal(spec.noticeHours)} h ahead; wait {showDecimal(spec.witnessWaitMinutes)} min
          </p>
        ) : null}
      </div>
      <div className="stack">
        <section className="sheet">
          <h2>Sent</h2>
          {state.notices.length === 0 ? <p className="quiet">No notice was sent.</p> : null}
          <ul className="plain-list">
            {state.notices.map(({ fact, answer }) => (
              <li key={fact.id}>
                <strong>Point {fact.body.point}</strong>, to {names[fact.body.to] ?? fact.body.to} ({fact.body.party}),
                for {showMoment(fact.body.for)}
                <br />
                <span className="quiet small">
                  sent {showMoment(fact.body.sentAt)} by {fact.body.how}
                </span>
                {answer ? (
                  <p>
                    {answer.body.outcome}
                    {answer.body.waitedMinutes ? `, waited ${showDecimal(answer.body.waitedMinutes)} min` : ''}
                    {answer.body.clause ? `, clause ${answer.body.clause}` : ''}
                  </p>
                ) : mayNotify ? (
                  <AnswerNotice stream={state.stream} notice={fact.id} />
                ) : (
                  <p className="quiet">no outcome recorded</p>
                )}
              </li>
            ))}
          </ul>
        </section>
        {state.waivers.length > 0 ? (
          <section className="sheet">
            <h2>Waived in writing</h2>
            <ul className="plain-list">
              {state.waivers.map((fact) => (
                <li key={fact.id}>
                  Point {fact.body.point}, {fact.body.party}: {names[fact.body.by] ?? fact.body.by}, {fact.body.writing}
                  , {showMoment(fact.observedAt)}
                </li>
              ))}
            </ul>
          </section>
        ) : null}
        {mayNotify && detail ? (
          <SendNotice
            stream={state.stream}
            points={state.points.map((point) => ({ no: point.no, title: point.plan.title }))}
            persons={detail.signers.map((one) => ({ id: one.person, label: one.name }))}
            utcOffset={detail.utcOffset}
            clockKind={detail.clockKind}
          />
        ) : null}
        {view.roles.includes('client') || view.roles.includes('engineer') ? (
          <WaiveHold
            stream={state.stream}
            party={view.roles.includes('client') ? 'client' : 'engineer'}
            by={view.me}
            points={state.points
              .filter((point) => point.awaiting.includes(view.roles.includes('client') ? 'client' : 'engineer'))
              .map((point) => ({ no: point.no, title: point.plan.title, attempt: point.current.attempt }))}
          />
        ) : null}
      </div>
    </main>
  )
}
