import Link from 'next/link'
import type { AuditFact, FactLink } from '@/lib/server/views/audit-fact-view'

/** What a fact corrects, what corrects it, and what else it names or is named by. */
export function FactRelations({ fact }: { fact: AuditFact }) {
  const lists = [
    ['Corrects', fact.corrects],
    ['Corrected by', fact.correctedBy],
    ['Names', fact.names],
    ['Named by', fact.namedBy],
  ] as const
  return (
    <section className="sheet stack">
      <h2>What it has to do with others</h2>
      <dl className="pairs">
        {lists.map(([title, links]) => (
          <div key={title} className="pair">
            <dt>{title}</dt>
            <dd>{links.length === 0 ? <span className="quiet">nothing</span> : <Links links={links} />}</dd>
          </div>
        ))}
        <div className="pair">
          <dt>Cites</dt>
          <dd>{fact.cites.length === 0 ? 'nothing' : fact.cites.map((one) => one.replace(':', ' ')).join(', ')}</dd>
        </div>
      </dl>
    </section>
  )
}

function Links({ links }: { links: readonly FactLink[] }) {
  return (
    <ul className="fact-links">
      {links.map((one) => (
        <li key={one.id}>
          <Link href={`/audit/facts/${one.id}`}>{one.what}</Link>{' '}
          <span className="quiet small">
            leaf {one.leaf}, {one.stream.replace(':', ' ')}
          </span>
        </li>
      ))}
    </ul>
  )
}
