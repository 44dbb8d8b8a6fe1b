import Link from 'next/link'
import { ActFold } from '@/app/_desk/act-fold'
import { BarredNote } from '@/app/_desk/barred-note'
import { mayAct, mayReadStores, offsetOf, pathOf, requireDesk } from '@/app/_desk/require-desk'
import { StandingMark } from '@/app/_desk/standing-mark'
import { EmptyNote } from '@/app/_ui/empty-note'
import { showMoment } from '@/lib/domain/time'
import { loadInstrumentRows } from '@/lib/server/views/instrument-list-view'
import { RegisterForm } from './register-form'

export const metadata = { title: 'Instruments' }

export default async function InstrumentsPage() {
  const reading = await requireDesk()
  if (!mayReadStores(reading)) return <BarredNote title="Instruments" forWhom="everyone with a role in a project" />
  const rows = await loadInstrumentRows(reading)
  const mayKeep = mayAct(reading, 'keep instruments')
  return (
    <main className="page stack" id="main">
      <div className="page-head">
        <div>
          <p className="eyebrow">Stores</p>
          <h1>Instruments</h1>
        </div>
        <div className="row">
          <Link className="button plain" href="/scan">
            Scan a label
          </Link>
          <Link className="button plain" href="/trace">
            Trace a number
          </Link>
        </div>
      </div>
      {mayKeep ? (
        <ActFold title="Register an instrument" open={rows.length === 0}>
          <RegisterForm utcOffset={offsetOf(reading)} />
        </ActFold>
      ) : null}
      {rows.length === 0 ? (
        <EmptyNote title="No instrument is registered yet.">
          {mayKeep ? null : <span>Stores, leads and inspectors register them.</span>}
        </EmptyNote>
      ) : (
        <div className="sheet">
          <table className="cards">
            <thead>
              <tr>
                <th>Instrument</th>
                <th>Kind</th>
                <th>Certificate</th>
                <th>Range</th>
                <th>Last check</th>
                <th>Today</th>
              </tr>
            </thead>
            <tbody>
              {rows.map((row) => (
                <tr key={row.stream}>
                  <th scope="row">
                    <Link href={pathOf('instruments', row.stream)}>{row.number}</Link>
                  </th>
                  <td>
                    {row.kind}
                    <br />
                    <span className="quiet small">{row.measures}</span>
                  </td>
                  <td data-label="Certificate">
                    {row.certificate ? (
                      <>
                        {row.certificate}
                        <br />
                        <span className="quiet small nowrap">to {row.dueOn}</span>
                      </>
                    ) : (
                      'none'
                    )}
                  </td>
                  <td data-label="Range">{row.range ?? 'not stated'}</td>
                  <td data-label="Last check">
                    {row.lastCheck ? (
                      <>
                        {row.lastCheck.words}
                        <br />
                        <span className="quiet small">{showMoment(row.lastCheck.at)}</span>
                      </>
                    ) : (
                      'none recorded'
                    )}
                  </td>
                  <td data-label="Today">
                    <StandingMark standing={row.standing} />
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
    </main>
  )
}
