import Link from 'next/link'
import { showMoment } from '@/lib/domain/time'
import type { TrailLineOfAudit } from '@/lib/server/views/audit-line'
import { clockWords } from '@/lib/server/views/audit-words'

/** Facts of the trail, one a row, in order of receipt. */
export function TrailTable({ lines }: { lines: readonly TrailLineOfAudit[] }) {
  return (
    <div className="scroll-x">
      <table className="cards tight-table">
        <thead>
          <tr>
            <th className="num">Leaf</th>
            <th>What</th>
            <th>Received</th>
            <th>Observed, entered</th>
            <th>Who</th>
          </tr>
        </thead>
        <tbody>
          {lines.map((line) => (
            <tr key={line.id}>
              <td data-label="Leaf" className="num">
                {line.leaf}
              </td>
              <th scope="row">
                <Link href={`/audit/facts/${line.id}`}>{line.what}</Link>
                <br />
                <span className="quiet small">{line.where}</span>
                {line.isBroken ? <p className="fail small">The stored bytes do not give the digest.</p> : null}
              </th>
              <td data-label="Received">
                <span className="nowrap">{showMoment(line.receivedAt)}</span>
                <br />
                <span className="quiet small">from {line.receivedBy}</span>
              </td>
              <td data-label="Observed, entered">
                {line.observedAt ? <span className="nowrap">{showMoment(line.observedAt)}</span> : 'not readable'}
                <br />
                <span className="quiet small">
                  {line.enteredAt === null
                    ? ''
                    : line.enteredAt === line.observedAt
                      ? 'entered then'
                      : `entered ${showMoment(line.enteredAt)}`}
                </span>
                {line.late ? <p className="not-proven small">late: {line.late}</p> : null}
              </td>
              <td data-label="Who">
                {line.observedBy ?? 'not readable'}
                {line.enteredBy === line.observedBy ? '' : `, entered by ${line.enteredBy}`}
                <br />
                <span className="quiet small">
                  {line.device ? `${line.device}, clock ${clockWords(line.clockOffsetMs)}` : ''}
                </span>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}
