import { showMoment } from '@/lib/domain/time'
import type { AuditFact } from '@/lib/server/views/audit-fact-view'
import { clockWords } from '@/lib/server/views/audit-words'

/** When a fact was observed, entered and received, by whom, and how right the device's clock was. */
export function FactTimes({ fact: { line, clockErrorMs } }: { fact: AuditFact }) {
  const moment = (at: string | null) => (at ? showMoment(at) : 'not readable')
  return (
    <section className="sheet stack">
      <h2>When and by whom</h2>
      <dl className="pairs">
        <dt>Observed</dt>
        <dd>
          {moment(line.observedAt)}, {line.observedBy ?? 'not readable'}
        </dd>
        <dt>Entered</dt>
        <dd>
          {moment(line.enteredAt)}, {line.enteredBy ?? 'not readable'}
        </dd>
        <dt>Received</dt>
        <dd>
          {showMoment(line.receivedAt)}, from {line.receivedBy}
        </dd>
        <dt>Device</dt>
        <dd>{line.device ?? 'not readable'}</dd>
        <dt>Its clock, at the entry</dt>
        <dd>{clockWords(line.clockOffsetMs)}</dd>
        <dt>Its clock, as known now</dt>
        <dd className={clockErrorMs !== null && Math.abs(clockErrorMs) >= 500 ? 'not-proven' : undefined}>
          {clockWords(clockErrorMs)}
        </dd>
        <dt>Late entry</dt>
        <dd className={line.late ? 'not-proven' : undefined}>{line.late ?? 'no'}</dd>
      </dl>
    </section>
  )
}
