import Link from 'next/link'
import { showMoment } from '@/lib/domain/time'
import { clockWords } from '@/lib/server/views/audit-words'
import type { TrailLine } from '@/lib/server/views/trail-view'

/** Every fact, one a row: when it was observed, entered and received, on which device and how right its clock was. */
export function TrailRows({ lines, mayAudit }: { lines: readonly TrailLine[]; mayAudit: boolean }) {
  return (
    <table className="cards">
      <thead>
        <tr>
          <th>Received</th>
          <th>Observed, entered</th>
          <th>What</th>
          <th>Who, on which device</th>
          <th>Digest</th>
        </tr>
      </thead>
      <tbody>
        {lines.map((line) => (
          <tr key={line.id} id={line.id}>
            <td data-label="Received">
              <span className="nowrap">{line.receivedAt ? showMoment(line.receivedAt) : '–'}</span>
              {line.receivedBy && line.receivedBy !== line.enteredBy ? (
                <p className="quiet small">from {line.receivedBy}</p>
              ) : null}
              {line.heldBackMinutes === null ? null : (
                <p className="not-proven small">an hour or more after it was keyed</p>
              )}
            </td>
            <td data-label="Observed">
              <span className="nowrap">{showMoment(line.observedAt)}</span>
              <p className="quiet small">
                {line.enteredAt === line.observedAt ? 'entered then' : `entered ${showMoment(line.enteredAt)}`}
              </p>
              {line.late ? <p className="not-proven small">late: {line.late}</p> : null}
            </td>
            <th scope="row">
              {mayAudit ? <Link href={`/audit/facts/${line.id}`}>{line.what}</Link> : line.what}
              <br />
              <span className="quiet small">{line.where}</span>
            </th>
            <td data-label="Who">
              {line.observedBy}
              {line.enteredBy === line.observedBy ? '' : `, entered by ${line.enteredBy}`}
              <br />
              <span
                className={`small ${line.clockErrorMs !== null && Math.abs(line.clockErrorMs) >= 500 ? 'not-proven' : 'quiet'}`}
              >
                {line.device}, clock {clockWords(line.clockErrorMs)}
              </span>
            </td>
            <td data-label="Digest" className="digest">
              {line.sha256 ? `${line.sha256.slice(0, 8)}…${line.sha256.slice(-8)}` : '–'}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}
