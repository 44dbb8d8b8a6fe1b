import { BarredNote } from '@/app/_desk/barred-note'
import { mayReadStores, pathOf, requireDesk, streamAt } from '@/app/_desk/require-desk'
import { LabelPage } from '@/app/_parts/label-page'
import { loadBatchLabel } from '@/lib/server/views/label-view'

export const metadata = { title: 'Label' }

export default async function BatchLabelPage({ params }: { params: Promise<{ name: string }> }) {
  const reading = await requireDesk()
  const stream = streamAt('batch', (await params).name)
  if (!mayReadStores(reading)) return <BarredNote title="Label" forWhom="everyone with a role in a project" />
  return <LabelPage content={await loadBatchLabel(reading, stream)} href={pathOf('batches', stream)} />
}
