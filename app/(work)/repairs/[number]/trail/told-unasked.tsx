import Link from 'next/link'
import { showMoment } from '@/lib/domain/time'
import type { ToldGroup } from '@/lib/server/views/trail-view'

/** What a reader is told without asking. A kind without entries says so: an empty list is an answer too. */
export function ToldUnasked({ groups, mayAudit }: { groups: readonly ToldGroup[]; mayAudit: boolean }) {
  return (
    <section className="sheet stack" aria-label="Told without asking">
      {groups.map(({ title, none, lines }) => (
        <div key={title}>
          <h2>
            {title}
            {lines.length > 0 ? `: ${lines.length}` : ''}
          </h2>
          {lines.length === 0 ? (
            <p className="quiet small">{none}</p>
          ) : (
            <ul className="plain-list">
              {lines.map((one) => (
                <li key={`${one.fact}${one.text}`}>
                  {one.isHere ? (
                    <a href={`#${one.fact}`}>{showMoment(one.at)}</a>
                  ) : mayAudit ? (
                    <Link href={`/audit/facts/${one.fact}`}>{showMoment(one.at)}</Link>
                  ) : (
                    showMoment(one.at)
                  )}{' '}
                  {one.text}
                </li>
              ))}
            </ul>
          )}
        </div>
      ))}
    </section>
  )
}
