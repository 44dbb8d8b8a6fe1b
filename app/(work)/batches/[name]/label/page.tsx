import Link from 'next/link'
import { notFound } from 'next/navigation'
import { BarredNote } from '@/app/_desk/barred-note'
import { mayReadStores, pathOf, requireDesk, streamAt } from '@/app/_desk/require-desk'
import { LabelPrint } from '@/app/_parts/label-print'
import { loadBatchLabel } from '@/lib/server/views/label-view'

export const metadata = { title: 'Label' }

export default async function BatchLabelPage({ params }: { params: Promise<{ name: string }> }) {
  const reading = await requireDesk()
  const stream = streamAt('batch', (await params).name)
  if (!mayReadStores(reading)) return <BarredNote title="Label" forWhom="everyone with a role in a project" />
  const content = await loadBatchLabel(reading, stream)
  if (!content) notFound()
  return (
    <main className="page narrow stack label-page" id="main">
      <div className="page-head no-print">
        <div>
          <p className="eyebrow">
            <Link href={pathOf('batches', stream)}>{content.title}</Link>
          </p>
          <h1>Label</h1>
        </div>
      </div>
      <LabelPrint content={content} />
    </main>
  )
}
