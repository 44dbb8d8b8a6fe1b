import { notFound } from 'next/navigation'
import { BarredNote } from '@/app/_desk/barred-note'
import type { AuditFault } from '@/lib/server/views/audit-head-view'

/** What stands in place of a page of the audit room that cannot be shown: who may read it, or why the log cannot be signed. */
export function AuditRefused({ title, fault }: { title: string; fault: AuditFault }) {
  if (fault.code === 'not-found') notFound()
  if (fault.code !== 'log-broken') return <BarredNote title={title} forWhom="auditors and inspectors" />
  return (
    <main className="page narrow" id="main">
      <div className="page-head">
        <h1>{title}</h1>
      </div>
      <div className="note refused" role="status">
        <strong>The log cannot be signed now.</strong>
        <span>{fault.message}</span>
        <span>A checkpoint or an export that you keep from before still says what the log held then.</span>
      </div>
    </main>
  )
}
