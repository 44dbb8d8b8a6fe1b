import Link from 'next/link'
import { showMoment } from '@/lib/domain/time'
import type { KeyLine } from '@/lib/server/views/audit-head-view'

/** The keys that signed this log, oldest first, each with the fact that took it. */
export function KeyHistory({ keys, size }: { keys: readonly KeyLine[]; size: number }) {
  return (
    <section className="sheet">
      <div className="sheet-head">
        <h2>Keys of the log</h2>
        <span className="quiet small">the last one signs</span>
      </div>
      <div className="scroll-x">
        <table className="cards">
          <thead>
            <tr>
              <th>Key</th>
              <th>Signs heads over</th>
              <th>Taken</th>
              <th>Vouched for by</th>
              <th>Reason</th>
            </tr>
          </thead>
          <tbody>
            {keys.map((one, at) => {
              const next = keys[at + 1]
              return (
                <tr key={one.fact}>
                  <th scope="row" className="digest">
                    <Link href={`/audit/facts/${one.fact}`}>{one.vkey.split('+')[1]}</Link>
                    <br />
                    <span className="quiet small">{one.vkey}</span>
                  </th>
                  <td data-label="Signs heads over">
                    {one.index + 1} to {next ? next.index : size} facts
                  </td>
                  <td data-label="Taken">
                    {showMoment(one.takenAt)}
                    <br />
                    <span className="quiet small">{one.takenBy}</span>
                  </td>
                  <td data-label="Vouched for by">
                    {at === 0 ? (
                      'nobody: the first key'
                    ) : one.isEndorsed ? (
                      `key ${keys[at - 1]?.vkey.split('+')[1]}`
                    ) : (
                      <strong className="not-proven">nobody: trust ends here</strong>
                    )}
                  </td>
                  <td data-label="Reason">{one.reason}</td>
                </tr>
              )
            })}
          </tbody>
        </table>
      </div>
    </section>
  )
}
