import Link from 'next/link'
import { showMoment } from '@/lib/domain/time'
import type { DrawnLine } from '@/lib/server/views/audit-drawn-line'
import { clockWords } from '@/lib/server/views/audit-words'
import { ProofMark } from '../proof-mark'
import { ChainList } from './chain-list'

/** One reading drawn, as keyed, and all that stands behind it. */
export function DrawnReading({ line, place }: { line: DrawnLine; place: number }) {
  const missing = line.chain.filter((one) => one.state === 'missing').length
  return (
    <article className="sheet stack drawn">
      <div className="sheet-head">
        <h2>
          {place}. {line.keyed}
        </h2>
        <span className={missing > 0 ? 'not-proven' : 'quiet'}>
          {missing > 0 ? `${missing} missing in the chain` : 'nothing missing in the chain'}
        </span>
      </div>
      <p>
        <Link href={`/repairs/${encodeURIComponent(line.repair)}/points/${line.point}?attempt=${line.attempt}`}>
          {line.repair}, point {line.point}
        </Link>{' '}
        {line.pointTitle}, attempt {line.attempt}. {line.record}: {line.place}.
        <span className="quiet small"> Reading no. {line.number} of the list.</span>
      </p>
      {line.corrected ? (
        <p className="note warn">
          <strong>Corrected since:</strong> <span>{line.corrected} stands now.</span>
        </p>
      ) : null}
      {line.isOverruled ? <p className="note warn">Another record was chosen to govern over this one.</p> : null}
      <div className="two">
        <dl className="pairs small">
          <dt>Observed</dt>
          <dd>{showMoment(line.observedAt)}</dd>
          <dt>Entered</dt>
          <dd>
            {showMoment(line.enteredAt)}, {line.enteredBy}
          </dd>
          <dt>Received</dt>
          <dd>
            {showMoment(line.receivedAt)}, from {line.receivedBy}
          </dd>
          <dt>Device</dt>
          <dd>
            {line.device}, clock {clockWords(line.clockOffsetMs)}
          </dd>
          {line.late ? (
            <>
              <dt>Late entry</dt>
              <dd className="not-proven">{line.late}</dd>
            </>
          ) : null}
          <dt>Record</dt>
          <dd>
            <Link href={`/audit/facts/${line.fact}`}>leaf {line.inLog.index}</Link>, SHA-256{' '}
            <span className="digest">{line.sha256}</span>
          </dd>
          <dt>Log</dt>
          <dd>
            <ProofMark claim={{ bytes: line.bytes, leaf: line.leaf, ...line.inLog }} />
          </dd>
        </dl>
        <ChainList steps={line.chain} />
      </div>
    </article>
  )
}
