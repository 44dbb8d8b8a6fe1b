import { notFound } from 'next/navigation'
import { BarredNote } from '@/app/_desk/barred-note'
import { ChangeTable } from '@/app/_desk/change-table'
import { mayReadStores, pathOf, requireDesk, streamAt } from '@/app/_desk/require-desk'
import { RevisionAside } from '@/app/_desk/revision-aside'
import { Letters } from '@/app/_ui/letters'
import { issuePlanAction } from '@/app/(work)/actions/revision-actions'
import { FORMS } from '@/lib/capture/forms/form-table'
import { EVENT_TEXT } from '@/lib/domain/plan'
import { loadPlanView } from '@/lib/server/views/plan-view'

export default async function PlanPage({
  params,
  searchParams,
}: {
  params: Promise<{ number: string }>
  searchParams: Promise<{ rev?: string }>
}) {
  const reading = await requireDesk()
  const stream = streamAt('plan', (await params).number)
  if (!mayReadStores(reading)) return <BarredNote title="Inspection plan" forWhom="everyone with a role in a project" />
  const view = await loadPlanView(reading, stream, (await searchParams).rev)
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
        </div>
        <strong>
          {view.shown === 'draft' ? 'Draft: not in force' : view.isInForce ? 'In force' : 'Not in force today'}
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
            <div className="sheet-head">
              <h2>Points</h2>
              <span className="quiet small">
                crew, inspector, client, engineer: H hold, W witness, R review, M monitor
              </span>
            </div>
            <table className="cards">
              <thead>
                <tr>
                  <th>Point</th>
                  <th>Who takes part</th>
                  <th>Recorded</th>
                  <th>Photos, signatures</th>
                  <th>Blocks</th>
                </tr>
              </thead>
              <tbody>
                {body.points.map((point) => (
                  <tr key={point.no}>
                    <th scope="row">
                      {point.no} {point.title}
                      {point.selfRelease ? <p className="small not-proven">own work may be released</p> : null}
                    </th>
                    <td>
                      <Letters participation={point.participation} />
                    </td>
                    <td data-label="Recorded">
                      {point.records
                        .map(
                          (one) =>
                            `${FORMS[one.type].title}${one.atLeast === 0 ? ', if any' : one.atLeast > 1 ? ` ×${one.atLeast}` : ''}`,
                        )
                        .join('; ') || 'nothing'}
                    </td>
                    <td data-label="Asks">
                      <p className="small">
                        {point.photos
                          .map((one) => `${one.show}${one.atLeast > 1 ? ` ×${one.atLeast}` : ''}`)
                          .join('; ') || 'no photo'}
                      </p>
                      <p className="small quiet">
                        {point.signatures.map((one) => `${one.meaning} by ${one.role}`).join(', ') ||
                          'no signature beyond the release'}
                      </p>
                    </td>
                    <td data-label="Blocks" className="small">
                      {blocksInWords(point.blocks)}
                    </td>
                  </tr>
                ))}
              </tbody>
            </table>
          </section>
          <section className="sheet">
            <h2>What makes earlier releases fall</h2>
            <table className="cards">
              <thead>
                <tr>
                  <th>Event</th>
                  <th>Falls</th>
                  <th>To be redone</th>
                </tr>
              </thead>
              <tbody>
                {body.invalidations.map((one) => (
                  <tr key={one.event}>
                    <th scope="row">{EVENT_TEXT[one.event]}</th>
                    <td data-label="Falls">{blocksInWords(one.falls)}</td>
                    <td data-label="Redo">{one.redo}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </section>
        </div>
        <RevisionAside
          reading={reading}
          view={view}
          path={pathOf('plans', stream)}
          action={issuePlanAction}
          cycle={view.draftCycle}
        />
      </div>
    </main>
  )
}

/** Point numbers with runs drawn together: 09 to 18. */
function blocksInWords(blocks: readonly string[]): string {
  const numbers = blocks.map(Number).sort((a, b) => a - b)
  const runs: [number, number][] = []
  for (const no of numbers) {
    const last = runs.at(-1)
    if (last && no === last[1] + 1) last[1] = no
    else runs.push([no, no])
  }
  const two = (no: number) => String(no).padStart(2, '0')
  return runs.map(([from, to]) => (from === to ? two(from) : `${two(from)} to ${two(to)}`)).join(', ') || 'none'
}
