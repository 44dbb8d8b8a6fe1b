import { notFound } from 'next/navigation'
import { BarredNote } from '@/app/_desk/barred-note'
import { ChangeTable } from '@/app/_desk/change-table'
import { mayReadStores, pathOf, requireDesk, streamAt } from '@/app/_desk/require-desk'
import { RevisionAside } from '@/app/_desk/revision-aside'
import { RULE_WORDS } from '@/app/_desk/rule-fields'
import { issueSpecificationAction } from '@/app/(work)/actions/revision-actions'
import { showDecimal } from '@/lib/domain/decimal'
import type { RuleKind } from '@/lib/domain/specification'
import { loadSpecificationView } from '@/lib/server/views/specification-view'

export default async function SpecificationPage({
  params,
  searchParams,
}: {
  params: Promise<{ number: string }>
  searchParams: Promise<{ rev?: string }>
}) {
  const reading = await requireDesk()
  const stream = streamAt('specification', (await params).number)
  if (!mayReadStores(reading)) return <BarredNote title="Specification" forWhom="everyone with a role in a project" />
  const view = await loadSpecificationView(reading, stream, (await searchParams).rev)
  if (!view) notFound()
  const { body } = view
  return (
    <main className="page stack" id="main">
      <div className="page-head">
        <div>
          <p className="eyebrow">{body.title}</p>
          <h1>
            {body.number} {view.shown === 'draft' ? `draft of rev ${view.nextRevision}` : `rev ${view.shown}`}
          </h1>
          <dl className="facts">
            <div>
              <dt>Wrap</dt>
              <dd>{body.wrap}</dd>
            </div>
            <div>
              <dt>Leak arrest</dt>
              <dd>{body.arrest.join(', ')}</dd>
            </div>
            <div>
              <dt>Decision rule</dt>
              <dd>{body.decisionRule}</dd>
            </div>
          </dl>
        </div>
        <strong>
          {view.shown === 'draft' ? 'Draft: no limit in force' : view.isInForce ? 'In force' : 'Not in force today'}
        </strong>
      </div>
      <div className="two wide-left">
        <div className="stack">
          {view.changes !== null ? (
            <section className="sheet">
              <h2>What {view.shown === 'draft' ? 'the draft' : `rev ${view.shown}`} changes</h2>
              <ChangeTable changes={view.changes} />
            </section>
          ) : null}
          <section className="sheet">
            <h2>Criteria by point</h2>
            <nav className="jump no-print" aria-label="Points">
              {view.byPoint.map(({ point }) => (
                <a key={point} href={`#point-${point}`}>
                  {point}
                </a>
              ))}
            </nav>
            <table className="cards">
              <thead>
                <tr>
                  <th>Clause</th>
                  <th>Criterion</th>
                  <th>Limit</th>
                </tr>
              </thead>
              {view.byPoint.map(({ point, criteria }) => (
                <tbody key={point} id={`point-${point}`}>
                  <tr className="point-row">
                    <th scope="rowgroup" colSpan={3}>
                      Point {point}
                    </th>
                  </tr>
                  {criteria.map((one) => (
                    <tr key={one.id}>
                      <td className="nowrap" data-label="Clause">
                        {one.clause}
                      </td>
                      <td>
                        {one.title}
                        <br />
                        <span className="quiet small">{RULE_WORDS[one.kind as RuleKind]}</span>
                      </td>
                      <td data-label="Limit">
                        <strong>{one.limit}</strong>
                      </td>
                    </tr>
                  ))}
                </tbody>
              ))}
            </table>
          </section>
          <section className="sheet">
            <h2>Notice, life and notes</h2>
            <dl className="pairs">
              <dt>Notice to witnesses</dt>
              <dd>{showDecimal(body.noticeHours)} h</dd>
              <dt>Wait for a witness</dt>
              <dd>{showDecimal(body.witnessWaitMinutes)} min</dd>
              <dt>Life counts from</dt>
              <dd>{body.lifeCountsFrom}</dd>
              <dt>Extended cures allowed</dt>
              <dd>{body.extendedCuresAllowed}</dd>
              <dt>Several taps at a mark</dt>
              <dd>{body.tapRule}</dd>
              <dt>Dew point</dt>
              <dd>{body.dewPointFormula}</dd>
            </dl>
            {body.notes.length > 0 ? (
              <ul className="plain-list">
                {body.notes.map((note) => (
                  <li key={note}>{note}</li>
                ))}
              </ul>
            ) : null}
          </section>
        </div>
        <RevisionAside
          reading={reading}
          view={view}
          path={pathOf('specifications', stream)}
          action={issueSpecificationAction}
        />
      </div>
    </main>
  )
}
