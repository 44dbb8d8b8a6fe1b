import { redirect } from 'next/navigation'
import { OpenRepairForm } from '@/app/_parts/open-repair-form'
import { EmptyNote } from '@/app/_ui/empty-note'
import { loadOpenRepairView } from '@/lib/server/views/open-repair-view'
import { openReadingDesk } from '@/lib/server/views/reading-desk'

export const metadata = { title: 'Open a repair' }

export default async function OpenRepairPage() {
  const reading = await openReadingDesk()
  if (!reading) redirect('/sign-in')
  const view = await loadOpenRepairView(reading)
  const isReady = view.projects.length > 0 && view.specifications.length > 0 && view.plans.length > 0
  return (
    <main className="page narrow" id="main">
      <div className="page-head">
        <h1>Open a repair</h1>
      </div>
      {isReady ? (
        <OpenRepairForm view={view} />
      ) : (
        <EmptyNote title="Something is missing first.">
          <span>
            A repair needs a project where you hold a role, an issued specification and an issued inspection plan.
          </span>
        </EmptyNote>
      )}
    </main>
  )
}
