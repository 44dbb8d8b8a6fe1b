import Link from 'next/link'
import { notFound } from 'next/navigation'
import { BarredNote } from '@/app/_desk/barred-note'
import { mayAct, pathOf, requireDesk, streamAt } from '@/app/_desk/require-desk'
import { loadSpecificationView } from '@/lib/server/views/specification-view'
import { SpecificationEditor } from '../../specification-editor'

export default async function SpecificationDraftPage({ params }: { params: Promise<{ number: string }> }) {
  const reading = await requireDesk()
  const stream = streamAt('specification', (await params).number)
  if (!mayAct(reading, 'draft specification or plan'))
    return <BarredNote title="Draft of a specification" forWhom="inspectors and engineers" />
  const view = (await loadSpecificationView(reading, stream, 'draft')) ?? (await loadSpecificationView(reading, stream))
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
        <Link className="button plain" href={pathOf('specifications', stream)}>
          Back
        </Link>
      </div>
      <SpecificationEditor
        kind="specification"
        stream={stream}
        initial={view.body}
        heads={[{ stream, length: view.length }]}
      />
    </main>
  )
}
