import Link from 'next/link'
import { redirect } from 'next/navigation'
import { EmptyNote } from '@/app/_ui/empty-note'
import { StatusMark } from '@/app/_ui/status-mark'
import { showSigned } from '@/lib/domain/decimal'
import { openReadingDesk } from '@/lib/server/views/reading-desk'
import { loadRepairStates } from '@/lib/server/views/repair-list-view'

export const metadata = { title: 'Repairs' }

export default async function RepairsPage() {
  const reading = await openReadingDesk()
  if (!reading) redirect('/sign-in')
  const states = await loadRepairStates(reading)
  const mayOpen = reading.roles.includes('inspector') || reading.roles.includes('lead')
  return (
    <main className="page" id="main">
      <div className="page-head">
        <h1>Repairs</h1>
        {mayOpen ? (
          <Link className="button" href="/repairs/new">
            Open a repair
          </Link>
        ) : null}
      </div>
      {states.length === 0 ? (
        <EmptyNote title="No repair is open to you.">
          {mayOpen ? (
            <span>Open one once its specification and plan are issued.</span>
          ) : (
            <span>A lead or an inspector opens repairs.</span>
          )}
        </EmptyNote>
      ) : (
        <table className="cards">
          <thead>
            <tr>
              <th>Repair</th>
              <th>Line</th>
              <th>Place</th>
              <th>At point</th>
              <th>Status</th>
            </tr>
          </thead>
          <tbody>
            {states.map((state) => {
              const next = state.points.find((point) => !['released', 'not applicable'].includes(point.current.state))
              const { body } = state.opened
              return (
                <tr key={state.number}>
                  <th scope="row">
                    <Link href={`/repairs/${state.number}`}>{state.number}</Link>
                  </th>
                  <td data-label="Line">
                    {body.line} {body.lineTitle}
                  </td>
                  <td data-label="Place">
                    {body.datum} {showSigned(body.stationFromDatum)} mm, {body.clock} o’clock
                  </td>
                  <td data-label="At point">
                    {next && !state.acceptance ? `${next.no} ${next.plan.title}` : 'all points done'}
                  </td>
                  <td data-label="Status">
                    <StatusMark status={state.status} />
                    {state.nonconformances.some((one) => one.isOpen) ? (
                      <p className="quiet small">nonconformance open</p>
                    ) : null}
                    {state.points.some((point) => point.current.state === 'in question') ? (
                      <p className="question small">in question</p>
                    ) : null}
                  </td>
                </tr>
              )
            })}
          </tbody>
        </table>
      )}
    </main>
  )
}
