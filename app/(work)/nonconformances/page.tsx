import Link from 'next/link'
import { BarredNote } from '@/app/_desk/barred-note'
import { NonconformanceMark } from '@/app/_desk/nonconformance-mark'
import { mayAct, mayReadStores, pathOf, requireDesk } from '@/app/_desk/require-desk'
import { EmptyNote } from '@/app/_ui/empty-note'
import { showMoment } from '@/lib/domain/time'
import { loadNonconformanceList, type NonconformanceRow } from '@/lib/server/views/nonconformance-list-view'

export const metadata = { title: 'Nonconformances' }

export default async function NonconformancesPage() {
  const reading = await requireDesk()
  if (!mayReadStores(reading)) return <BarredNote title="Nonconformances" forWhom="everyone with a role in a project" />
  const list = await loadNonconformanceList(reading)
  const open = list.rows.filter((row) => row.isOpen)
  const ended = list.rows.filter((row) => !row.isOpen)
  const mayRaise = mayAct(reading, 'raise nonconformance')
  return (
    <main className="page stack" id="main">
      <div className="page-head">
        <div>
          <p className="eyebrow">Anyone may raise one; nobody may delete one</p>
          <h1>Nonconformances</h1>
          <dl className="facts">
            <div>
              <dt>Open</dt>
              <dd>{open.length}</dd>
            </div>
            <div>
              <dt>Blocking acceptance</dt>
              <dd>{open.filter((row) => row.blocksAcceptance).length}</dd>
            </div>
            <div>
              <dt>Actions past their day</dt>
              <dd className={list.rows.some((row) => row.lateActions > 0) ? 'fail' : ''}>
                {list.rows.reduce((sum, row) => sum + row.lateActions, 0)}
              </dd>
            </div>
          </dl>
        </div>
        {mayRaise ? (
          <Link className="button" href="/nonconformances/new">
            Raise one
          </Link>
        ) : null}
      </div>
      <section className="sheet">
        <h2>Open</h2>
        {open.length === 0 ? <EmptyNote title="None is open." /> : <Rows rows={open} />}
      </section>
      {ended.length > 0 ? (
        <section className="sheet">
          <h2>Closed, rejected or voided</h2>
          <Rows rows={ended} />
        </section>
      ) : null}
      <section className="sheet">
        <div className="sheet-head">
          <h2>Observations</h2>
          <span className="quiet small">{list.observations.length}, remarked and no nonconformance</span>
        </div>
        {list.observations.length === 0 ? (
          <p className="quiet">None recorded.</p>
        ) : (
          <ul className="plain-list">
            {list.observations.map((one) => (
              <li key={`${one.repair}${one.point}${one.at}`}>
                <Link href={`/repairs/${one.repair}/points/${one.point}`}>
                  {one.repair}, point {one.point}
                </Link>{' '}
                {one.text}
                <br />
                <span className="quiet small">
                  {one.by}, {showMoment(one.at)}
                </span>
              </li>
            ))}
          </ul>
        )}
      </section>
    </main>
  )
}

function Rows({ rows }: { rows: readonly NonconformanceRow[] }) {
  return (
    <table className="cards">
      <thead>
        <tr>
          <th>Number</th>
          <th>What</th>
          <th>Repair, point</th>
          <th>Raised</th>
          <th>State</th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={row.stream}>
            <th scope="row">
              <Link href={pathOf('nonconformances', row.stream)}>{row.number}</Link>
            </th>
            <td>
              {row.title}
              {row.disposition ? (
                <>
                  <br />
                  <span className="quiet small">disposition: {row.disposition}</span>
                </>
              ) : null}
            </td>
            <td data-label="Repair, point">
              {row.repair ? <Link href={`/repairs/${row.repair}`}>{row.repair}</Link> : 'no repair'}
              {row.point ? `, ${row.point}` : ''}
            </td>
            <td data-label="Raised">
              <span className="nowrap">{row.raisedOn}</span>
              <br />
              <span className="quiet small">{row.raisedBy}</span>
            </td>
            <td data-label="State">
              <NonconformanceMark state={row.state} />
              {row.waitsFor.length > 0 ? <p className="small">waits for {row.waitsFor.join(' and ')}</p> : null}
              {row.openActions > 0 ? (
                <p className={`small${row.lateActions > 0 ? ' fail' : ' quiet'}`}>
                  {row.openActions} corrective {row.openActions === 1 ? 'action' : 'actions'} open
                  {row.lateActions > 0 ? `, ${row.lateActions} past the day` : ''}
                </p>
              ) : null}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}
