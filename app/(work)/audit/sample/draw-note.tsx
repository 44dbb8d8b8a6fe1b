import { showMoment } from '@/lib/domain/time'
import type { AuditSample } from '@/lib/server/views/audit-sample-view'
import { PrintButton } from './print-button'

/** What was drawn from, by which seed and under which head, and how anyone draws it again. */
export function DrawNote({ sample, draw }: { sample: AuditSample; draw: NonNullable<AuditSample['draw']> }) {
  const { asked, head } = sample
  const { checkpoint } = head.log
  const filters = [
    asked.repair ? `repair ${asked.repair.slice('repair:'.length)}` : 'all repairs',
    asked.point ? `point ${asked.point}` : 'all points',
    asked.from || asked.to
      ? `observed ${asked.from ? `from ${showMoment(asked.from)}` : ''} ${asked.to ? `to ${showMoment(asked.to)}` : ''}`.trim()
      : 'at any time',
    asked.withSeries ? 'with the series of loggers' : 'without the series of loggers',
  ]
  return (
    <section className="sheet stack draw-note">
      <div className="sheet-head">
        <h2>
          {draw.lines.length} of {draw.readingCount} readings
        </h2>
        <PrintButton />
      </div>
      {draw.readingCount === 0 ? (
        <p className="note warn">
          <strong>There is nothing to draw from.</strong> <span>No reading answers to these filters.</span>
        </p>
      ) : null}
      {draw.brokenLeaves.length > 0 ? (
        <div className="note refused">
          <strong>Records that could not be drawn from: {draw.brokenLeaves.length}.</strong>
          <span>Their stored bytes do not give their digest. Leaves {draw.brokenLeaves.join(', ')}.</span>
        </div>
      ) : null}
      <dl className="pairs">
        <dt>Seed</dt>
        <dd className="digest">{asked.seed}</dd>
        <dt>Drawn from</dt>
        <dd>
          {draw.readingCount} readings in {draw.recordCount} records among the first {asked.size} facts:{' '}
          {filters.join(', ')}
        </dd>
        <dt>Shown under the head</dt>
        <dd>
          {checkpoint.size} facts, <span className="digest">{head.shortDigest}</span>
        </dd>
        <dt>Log</dt>
        <dd className="digest">{checkpoint.origin}</dd>
        <dt>Drawn</dt>
        <dd>
          {showMoment(draw.drawnAt)}, {head.reader}
        </dd>
      </dl>
      <details className="redo" open>
        <summary className="fold-head plain">How anyone draws this again</summary>
        <p className="small">
          The readings stand in one list: facts of kind <code>recorded</code> of these repairs in order of leaf number,
          in each the values of <code>body.record</code> in the order of its canonical JSON that have the form of a
          reading (an object with a <code>kind</code> of number, below, above, through-wall, no-access, not-applicable
          or not-inspected). Left out are the design sheet and members named <code>taps</code>, <code>grid</code>,{' '}
          <code>reference</code> and <code>tolerance</code>
          {asked.withSeries ? '' : ', and the series of loggers: members named series and ambient'}. The list is
          numbered from 0 to {Math.max(0, draw.readingCount - 1)}.
        </p>
        <p className="small">
          For c = 0, 1, 2 … take the first eight bytes of SHA-256 over the text of the seed, one line break and c, as a
          big-endian number x. An x at or above the greatest multiple of {draw.readingCount} that is not above 2⁶⁴ is
          passed over. Else the reading number x mod {draw.readingCount} is drawn, unless it was drawn before. Stop at{' '}
          {asked.count}. The first: <code>printf '{asked.seed}\n0' | sha256sum</code>
        </p>
      </details>
    </section>
  )
}
