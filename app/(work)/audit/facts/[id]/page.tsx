import Link from 'next/link'
import { requireDesk } from '@/app/_desk/require-desk'
import { ScrollText } from '@/app/_ui/scroll-text'
import { loadAuditFact } from '@/lib/server/views/audit-fact-view'
import { AuditNav } from '../../audit-nav'
import { AuditRefused } from '../../audit-refused'
import { ProofMark } from '../../proof-mark'
import { FactRelations } from './fact-relations'
import { FactTimes } from './fact-times'

export const metadata = { title: 'Fact' }

export default async function AuditFactPage({ params }: { params: Promise<{ id: string }> }) {
  const reading = await requireDesk()
  const loaded = await loadAuditFact(reading, (await params).id)
  if (!loaded.ok) return <AuditRefused title="Fact" fault={loaded.error} />
  const { line, bytes, pretty, leaf, inLog, origin } = loaded.value
  const part = (name: string) => `/api/audit/facts/${line.id}/${name}`
  return (
    <main className="page stack" id="main">
      <div className="page-head">
        <div>
          <p className="eyebrow">
            {line.where} · fact {line.position} of its stream
          </p>
          <h1>{line.what}</h1>
        </div>
        <AuditNav at={null} />
      </div>
      {line.isBroken ? (
        <div className="note refused" role="status">
          <strong>The stored bytes are not those that were received.</strong>
          <span>
            They do not give the digest that the log holds, or are no fact of this stream: somebody changed the
            database.
          </span>
        </div>
      ) : null}
      <div className="two">
        <section className="sheet stack">
          <h2>In the log</h2>
          <ProofMark claim={{ bytes, leaf, ...inLog }} />
          <dl className="pairs">
            <dt>Leaf number</dt>
            <dd>
              {inLog.index} of a log of {inLog.size}
            </dd>
            <dt>Fact</dt>
            <dd className="digest">{line.id}</dd>
            <dt>SHA-256</dt>
            <dd className="digest">{line.sha256}</dd>
            <dt>Log</dt>
            <dd className="digest">{origin}</dd>
          </dl>
          <div className="row no-print">
            {(
              [
                ['fact.json', 'Bytes'],
                ['leaf.json', 'Leaf'],
                ['inclusion.json', 'Inclusion proof'],
                ['checkpoint.txt', 'Checkpoint'],
              ] as const
            ).map(([name, label]) => (
              <a key={name} className="button plain" href={part(name)} download>
                {label}
              </a>
            ))}
          </div>
        </section>
        <FactTimes fact={loaded.value} />
      </div>
      <FactRelations fact={loaded.value} />
      <section className="sheet stack">
        <div className="sheet-head">
          <h2>What it says</h2>
          <span className="quiet small">{new TextEncoder().encode(bytes).length} bytes, canonical JSON</span>
        </div>
        <div className="two">
          <div className="stack tight">
            <h3>Laid out</h3>
            <ScrollText label="Laid out" className="exact tall" text={pretty} />
          </div>
          <div className="stack tight">
            <h3>Exact bytes, as hashed</h3>
            <ScrollText label="Exact bytes, as hashed" className="exact tall wrapped" text={bytes} />
            <h3>Leaf, as hashed</h3>
            <pre className="exact wrapped">{leaf}</pre>
          </div>
        </div>
      </section>
      {line.stream.startsWith('repair:') ? (
        <p>
          <Link href={`/repairs/${encodeURIComponent(line.stream.slice('repair:'.length))}/trail`}>
            The trail of this repair
          </Link>
        </p>
      ) : null}
    </main>
  )
}
