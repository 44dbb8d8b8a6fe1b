import Link from 'next/link'
import { notFound } from 'next/navigation'
import { BarredNote } from '@/app/_desk/barred-note'
import { mayAct, pathOf, requireDesk, streamAt } from '@/app/_desk/require-desk'
import { loadPlanView } from '@/lib/server/views/plan-view'
import { PlanEditor } from '../../plan-editor'

export default async function PlanDraftPage({ params }: { params: Promise<{ number: string }> }) {
  const reading = await requireDesk()
  const stream = streamAt('plan', (await params).number)
  if (!mayAct(reading, 'draft specification or plan'))
    return <BarredNote title="Draft of a plan" forWhom="inspectors and engineers" />
  const view = (await loadPlanView(reading, stream, 'draft')) ?? (await loadPlanView(reading, stream))
  if (!view) notFound()
  return (
    <main className="page stack" id="main">
      <div className="page-head">
        <div>
          <p className="eyebrow">{view.draft ? 'The draft as last saved' : `Starts from rev ${view.shown}`}</p>
          <h1>
            {view.body.number}, draft of rev {view.nextRevision}
          </h1>
        </div>
        <Link className="button plain" href={pathOf('plans', stream)}>
          Back
        </Link>
      </div>
      <PlanEditor kind="plan" stream={stream} initial={view.body} heads={[{ stream, length: view.length }]} />
    </main>
  )
}
