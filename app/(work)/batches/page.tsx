import Link from 'next/link'
import { ActFold } from '@/app/_desk/act-fold'
import { BarredNote } from '@/app/_desk/barred-note'
import { mayAct, mayReadStores, offsetOf, pathOf, requireDesk } from '@/app/_desk/require-desk'
import { StandingMark } from '@/app/_desk/standing-mark'
import { EmptyNote } from '@/app/_ui/empty-note'
import { loadBatchRows } from '@/lib/server/views/batch-list-view'
import { ReceiveForm } from './receive-form'

export const metadata = { title: 'Batches' }

export default async function BatchesPage() {
  const reading = await requireDesk()
  if (!mayReadStores(reading)) return <BarredNote title="Batches" forWhom="everyone with a role in a project" />
  const rows = await loadBatchRows(reading)
  const mayReceive = mayAct(reading, 'keep stores')
  return (
    <main className="page stack" id="main">
      <div className="page-head">
        <div>
          <p className="eyebrow">Stores</p>
          <h1>Batches</h1>
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
      {mayReceive ? (
        <ActFold title="Receive a batch" note="label scanned, pasted or typed" open={rows.length === 0}>
          <ReceiveForm
            utcOffset={offsetOf(reading)}
            draftKey={`${reading.actor.tenant}|${reading.actor.person}|receive`}
          />
        </ActFold>
      ) : null}
      {rows.length === 0 ? (
        <EmptyNote title="No batch was received yet.">
          {mayReceive ? null : <span>Stores receive batches.</span>}
        </EmptyNote>
      ) : (
        <div className="sheet">
          <table className="cards">
            <thead>
              <tr>
                <th>Batch</th>
                <th>Product</th>
                <th>Received</th>
                <th>Use by</th>
                <th>Today</th>
              </tr>
            </thead>
            <tbody>
              {rows.map((row) => (
                <tr key={row.stream}>
                  <th scope="row">
                    <Link href={pathOf('batches', row.stream)}>{row.number}</Link>
                  </th>
                  <td>
                    {row.product}
                    <br />
                    <span className="quiet small">{row.role}</span>
                  </td>
                  <td data-label="Received">
                    {row.received ?? 'amount not stated'}
                    <br />
                    <span className="quiet small">
                      {row.receivedOn}
                      {row.isOpened ? ', opened' : ''}
                    </span>
                  </td>
                  <td data-label="Use by" className="nowrap">
                    {row.expiresOn ?? 'not stated'}
                  </td>
                  <td data-label="Today">
                    <StandingMark standing={row.standing} />
                    {row.isRefused ? <p className="quiet small">refused at a materials check</p> : null}
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
