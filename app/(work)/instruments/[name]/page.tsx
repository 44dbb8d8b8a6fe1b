import Link from 'next/link'
import { notFound } from 'next/navigation'
import { BarredNote } from '@/app/_desk/barred-note'
import { EventTrail } from '@/app/_desk/event-trail'
import { mayReadStores, pathOf, requireDesk, streamAt } from '@/app/_desk/require-desk'
import { StandingMark } from '@/app/_desk/standing-mark'
import { showUnit } from '@/lib/domain/reading'
import { showMoment } from '@/lib/domain/time'
import { type CertificateLine, loadInstrumentView } from '@/lib/server/views/instrument-view'
import { InstrumentActs } from './instrument-acts'

const TODAY: Record<CertificateLine['today'], string> = {
  valid: 'in force',
  overdue: 'ran out',
  not_yet_calibrated: 'not yet',
  unknown: 'days contradict',
}

export default async function InstrumentPage({ params }: { params: Promise<{ name: string }> }) {
  const reading = await requireDesk()
  const stream = streamAt('instrument', (await params).name)
  if (!mayReadStores(reading)) return <BarredNote title="Instrument" forWhom="everyone with a role in a project" />
  const view = await loadInstrumentView(reading, stream)
  if (!view) notFound()
  const { registered } = view
  return (
    <main className="page stack" id="main">
      <div className="page-head">
        <div>
          <p className="eyebrow">{registered.kind}</p>
          <h1>Instrument {registered.number}</h1>
          <dl className="facts">
            <div>
              <dt>Reads in</dt>
              <dd>{registered.measures.map(showUnit).join(', ') || 'not stated'}</dd>
            </div>
            <div>
              <dt>Serial</dt>
              <dd>{registered.serial ?? 'not stated'}</dd>
            </div>
            {registered.asset ? (
              <div>
                <dt>Asset number</dt>
                <dd>{registered.asset}</dd>
              </div>
            ) : null}
          </dl>
        </div>
        <div className="stack tight">
          <StandingMark standing={view.standing} />
          <Link className="button plain" href={`${pathOf('instruments', stream)}/label`}>
            Print a label
          </Link>
          <Link className="button" href={pathOf('trace/instrument', stream)}>
            Its readings
          </Link>
        </div>
      </div>
      {view.lastFoundWrong ? (
        <div className="note question-note">
          <strong>Found wrong on {showMoment(view.lastFoundWrong.observedAt)}.</strong>
          <span>
            {view.lastFoundWrong.body.how}. Results since the last good full check are in question until a decision is
            recorded per repair.
          </span>
          <Link className="row-link" href={`${pathOf('trace/instrument', stream)}?impact=${view.lastFoundWrong.id}`}>
            Impact search
          </Link>
        </div>
      ) : null}
      <div className="two">
        <div className="stack">
          <section className="sheet">
            <h2>Certificates</h2>
            {view.certificates.length === 0 ? (
              <p className="quiet">None recorded: readings with it are not proven.</p>
            ) : (
              <table className="cards">
                <thead>
                  <tr>
                    <th>Certificate</th>
                    <th>From</th>
                    <th>To</th>
                    <th>Range</th>
                    <th>Today</th>
                  </tr>
                </thead>
                <tbody>
                  {view.certificates.map((one) => (
                    <tr key={one.fact}>
                      <th scope="row">
                        {one.certificate}
                        <br />
                        <span className="quiet small">{one.laboratory}</span>
                      </th>
                      <td data-label="From" className="nowrap">
                        {one.calibratedOn ?? 'day recorded'}
                      </td>
                      <td data-label="To" className="nowrap">
                        {one.dueOn}
                      </td>
                      <td data-label="Range">
                        {one.range ?? 'not stated'}
                        {one.uncertainty ? (
                          <>
                            <br />
                            <span className="quiet small">± {one.uncertainty}, k 2</span>
                          </>
                        ) : null}
                      </td>
                      <td data-label="Today">{TODAY[one.today]}</td>
                    </tr>
                  ))}
                </tbody>
              </table>
            )}
            <p className="quiet small">
              A certificate that ran out since does not void readings taken while it was in force; a later one does not
              displace it.
            </p>
          </section>
          <section className="sheet">
            <h2>What was done with it</h2>
            <EventTrail events={view.events} label={`What was done with ${registered.number}`} />
          </section>
        </div>
        <InstrumentActs reading={reading} view={view} />
      </div>
    </main>
  )
}
