import Link from 'next/link'
import { notFound, redirect } from 'next/navigation'
import { showMoment } from '@/lib/domain/time'
import { openReadingDesk } from '@/lib/server/views/reading-desk'
import { loadTrailView } from '@/lib/server/views/trail-view'

export const metadata = { title: 'Trail' }

export default async function TrailPage({ params }: { params: Promise<{ number: string }> }) {
  const reading = await openReadingDesk()
  if (!reading) redirect('/sign-in')
  const number = decodeURIComponent((await params).number)
  const view = await loadTrailView(reading, number)
  if (!view) notFound()
  return (
    <main className="page" id="main">
      <div className="page-head">
        <div>
          <p className="eyebrow">
            <Link href={`/repairs/${encodeURIComponent(number)}`}>‹ {number}</Link>
          </p>
          <h1>Trail</h1>
        </div>
        <p className="quiet">{view.lines.length} facts in order of receipt. Nothing here can be edited or deleted.</p>
      </div>
      {view.remarkable.length > 0 ? (
        <section className="sheet" style={{ marginBottom: 24 }}>
          <h2>Late, corrected, withdrawn, doubtful</h2>
          <ul className="plain-list">
            {view.remarkable.map((one) => (
              <li key={`${one.fact}${one.text}`}>
                {one.text} <span className="quiet small">{showMoment(one.at)}</span>
              </li>
            ))}
          </ul>
        </section>
      ) : null}
      <table className="cards">
        <thead>
          <tr>
            <th>Received</th>
            <th>Observed</th>
            <th>What</th>
            <th>Who</th>
            <th>Digest</th>
          </tr>
        </thead>
        <tbody>
          {view.lines.map((line) => (
            <tr key={line.id} id={line.id}>
              <td data-label="Received" className="nowrap">
                {line.receivedAt ? showMoment(line.receivedAt) : '–'}
              </td>
              <td data-label="Observed" className="nowrap">
                {showMoment(line.observedAt)}
                {line.late ? <p className="not-proven small">late: {line.late}</p> : null}
              </td>
              <th scope="row">
                {line.what}
                <br />
                <span className="quiet small">{line.where}</span>
              </th>
              <td data-label="Who">
                {line.observedBy}
                {line.enteredBy === line.observedBy ? '' : `, entered by ${line.enteredBy}`}
                <br />
                <span className="quiet small">device {line.device}</span>
              </td>
              <td data-label="Digest" className="digest">
                {line.sha256 ? `${line.sha256.slice(0, 8)}…${line.sha256.slice(-8)}` : '–'}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </main>
  )
}
