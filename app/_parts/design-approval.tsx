import Link from 'next/link'
import { Glyph } from '@/app/_ui/glyph'
import { isApproved } from '@/lib/domain/design/design-approval'
import { showMoment } from '@/lib/domain/time'
import type { DesignView } from '@/lib/server/views/design-view'
import { DesignApprove } from './design-approve'

/** Every revision of the sheet with who recorded and who approved it, and the approval of the one in force. */
export function DesignApproval({ view }: { view: DesignView }) {
  const { state, sheet, names, at } = view
  const base = `/repairs/${encodeURIComponent(state.number)}/points`
  return (
    <section className="sheet">
      <h2>Engineer’s approval</h2>
      {sheet.revisions.length === 0 ? <p className="not-proven">No design sheet is recorded.</p> : null}
      <ul className="plain-list">
        {sheet.revisions.map((one) => (
          <li key={one.fact} className="stack tight">
            <div className="row between">
              <strong>
                {one.sheetNo} rev {one.revision}
                {one.isInForce ? ', in force' : one.isOverruled ? ', another record governs' : ', superseded'}
              </strong>
              <span className={`mark ${isApproved(one) ? 'pass' : 'not-proven'}`}>
                <Glyph name={isApproved(one) ? 'pass' : 'not proven'} />
                {isApproved(one) ? 'Approved' : 'Not approved'}
              </span>
            </div>
            <span className="quiet small">
              recorded {showMoment(one.recordedAt)} by {names[one.recordedBy] ?? one.recordedBy}
              {one.isCorrected ? ', corrected since' : ''}
            </span>
            {one.approvals.map((approval) => (
              <span key={`${approval.by}${approval.at}`} className="small">
                approved {showMoment(approval.at)} by {approval.name}
                {approval.state === 'broken' ? ': a correction after it is not covered' : ''}
              </span>
            ))}
            {one.released.map((release) => (
              <span key={release.fact.id} className="small">
                hold released for the engineer {showMoment(release.fact.observedAt)}, {release.state}
              </span>
            ))}
            {one.isInForce && !isApproved(one) ? (
              <DesignApprove
                stream={state.stream}
                point={one.point}
                attempt={one.attempt}
                covers={one.covers}
                label={`${one.sheetNo} rev ${one.revision}`}
                signers={view.signers}
                me={view.me}
              />
            ) : null}
          </li>
        ))}
      </ul>
      {at && view.isEngineer ? (
        <p className="no-print">
          <Link className="button plain" href={`${base}/${at.point}/record/design?attempt=${at.attempt}`}>
            Record a design sheet
          </Link>
        </p>
      ) : null}
    </section>
  )
}
