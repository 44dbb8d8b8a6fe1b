import Link from 'next/link'
import { BarredNote } from '@/app/_desk/barred-note'
import { mayAct, mayReadStores, requireDesk } from '@/app/_desk/require-desk'
import { RevisionList } from '@/app/_desk/revision-list'
import { EmptyNote } from '@/app/_ui/empty-note'
import { loadSpecificationRows } from '@/lib/server/views/specification-list-view'

export const metadata = { title: 'Specifications' }

export default async function SpecificationsPage() {
  const reading = await requireDesk()
  if (!mayReadStores(reading)) return <BarredNote title="Specifications" forWhom="everyone with a role in a project" />
  const rows = await loadSpecificationRows(reading)
  const mayDraft = mayAct(reading, 'draft specification or plan')
  return (
    <main className="page stack" id="main">
      <div className="page-head">
        <div>
          <p className="eyebrow">Every limit comes from here, at a stated revision</p>
          <h1>Specifications</h1>
        </div>
        {mayDraft ? (
          <Link className="button" href="/specifications/new">
            New specification
          </Link>
        ) : null}
      </div>
      {rows.length === 0 ? (
        <EmptyNote title="No specification is on record yet.">
          <span>A repair needs one with an issued revision.</span>
        </EmptyNote>
      ) : (
        <RevisionList rows={rows} folder="specifications" />
      )}
    </main>
  )
}
