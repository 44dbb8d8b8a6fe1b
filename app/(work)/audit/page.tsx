import { requireDesk } from '@/app/_desk/require-desk'
import { showMoment } from '@/lib/domain/time'
import { loadAuditHead } from '@/lib/server/views/audit-head-view'
import { AuditNav } from './audit-nav'
import { AuditRefused } from './audit-refused'
import { ConsistencyForm } from './consistency-form'
import { KeptText } from './kept-text'
import { KeyHistory } from './key-history'
import { ReachNote } from './reach-note'

export const metadata = { title: 'Audit room' }

export default async function AuditPage() {
  const reading = await requireDesk()
  const loaded = await loadAuditHead(reading)
  if (!loaded.ok) return <AuditRefused title="Audit room" fault={loaded.error} />
  const { log, shortDigest, keyLines, organisation, reach, takenAt } = loaded.value
  const { checkpoint } = log
  return (
    <main className="page stack" id="main">
      <div className="page-head">
        <div>
          <p className="eyebrow">{organisation}</p>
          <h1>Audit room</h1>
        </div>
        <AuditNav at="/audit" />
      </div>
      <ReachNote reach={reach} />
      <div className="two">
        <section className="sheet stack">
          <div className="sheet-head">
            <h2>The log now</h2>
            <span className="quiet small">{showMoment(takenAt)}</span>
          </div>
          <p className="short-digest">
            <span className="visually-hidden">Short digest </span>
            {shortDigest}
          </p>
          <dl className="pairs">
            <dt>Facts</dt>
            <dd>{checkpoint.size}</dd>
            <dt>Origin</dt>
            <dd className="digest">{checkpoint.origin}</dd>
            <dt>Root</dt>
            <dd className="digest">{checkpoint.root}</dd>
          </dl>
          <h3>Checkpoint</h3>
          <KeptText text={checkpoint.text} fileName={`checkpoint-${checkpoint.size}.txt`} label="checkpoint" />
          <h3>Log key</h3>
          <KeptText text={`${checkpoint.vkey}\n`} fileName="log-key.txt" label="log key" />
        </section>
        <div className="stack">
          <section className="sheet stack">
            <h2>What to keep, and why</h2>
            <p>
              Every fact that this organisation received is a numbered leaf of one log. The checkpoint is the log’s
              signed head: how many leaves, and one root over all of them.
            </p>
            <p>
              Keep a checkpoint where nobody here can reach it: on your own disk, in your report, in a letter. Whoever
              later changes, drops or back-dates a fact cannot make that checkpoint fit again. The short digest is
              enough to compare by telephone.
            </p>
            <p>
              Keep the log key once, from your first visit. A later key counts only where the one before it endorsed it.
            </p>
          </section>
          <section className="sheet stack">
            <div className="sheet-head">
              <h2>Compare with an earlier checkpoint</h2>
              <span className="quiet small">computed in your browser</span>
            </div>
            <ConsistencyForm />
          </section>
        </div>
      </div>
      <section className="sheet stack">
        <div className="sheet-head">
          <h2>The whole log as one file</h2>
          <span className="quiet small">every fact and leaf, closed by a checkpoint</span>
        </div>
        {reach.isWhole ? (
          <div className="row">
            <a className="button" href="/api/audit/log" download>
              Download the log
            </a>
            <span className="quiet">
              {checkpoint.size} facts. Check it with the verifier, on a machine of your own: it needs no server.
            </span>
          </div>
        ) : (
          <p className="quiet">For auditors and inspectors of every project of the organisation.</p>
        )}
      </section>
      <KeyHistory keys={keyLines} size={checkpoint.size} />
    </main>
  )
}
