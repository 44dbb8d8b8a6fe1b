import Link from 'next/link'
import { BarredNote } from '@/app/_desk/barred-note'
import { mayAct, mayReadStores, requireDesk } from '@/app/_desk/require-desk'
import { RevisionList } from '@/app/_desk/revision-list'
import { EmptyNote } from '@/app/_ui/empty-note'
import { loadPlanRows } from '@/lib/server/views/plan-list-view'

export const metadata = { title: 'Inspection plans' }

export default async function PlansPage() {
  const reading = await requireDesk()
  if (!mayReadStores(reading))
    return <BarredNote title="Inspection plans" forWhom="everyone with a role in a project" />
  const rows = await loadPlanRows(reading)
  const mayDraft = mayAct(reading, 'draft specification or plan')
  return (
    <main className="page stack" id="main">
      <div className="page-head">
        <div>
          <p className="eyebrow">Who holds, witnesses, reviews or monitors which point</p>
          <h1>Inspection and test plans</h1>
        </div>
        {mayDraft ? (
          <Link className="button" href="/plans/new">
            New plan
          </Link>
        ) : null}
      </div>
      {rows.length === 0 ? (
        <EmptyNote title="No plan is on record yet.">
          {mayDraft ? (
            <span>Start from the 22 points of a leak repair.</span>
          ) : (
            <span>Inspectors and engineers draft plans.</span>
          )}
        </EmptyNote>
      ) : (
        <RevisionList rows={rows} folder="plans" />
      )}
    </main>
  )
}
