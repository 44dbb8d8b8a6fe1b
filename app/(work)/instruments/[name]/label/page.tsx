import { BarredNote } from '@/app/_desk/barred-note'
import { mayReadStores, pathOf, requireDesk, streamAt } from '@/app/_desk/require-desk'
import { LabelPage } from '@/app/_parts/label-page'
import { loadInstrumentLabel } from '@/lib/server/views/label-view'

export const metadata = { title: 'Label' }

export default async function InstrumentLabelPage({ params }: { params: Promise<{ name: string }> }) {
  const reading = await requireDesk()
  const stream = streamAt('instrument', (await params).name)
  if (!mayReadStores(reading)) return <BarredNote title="Label" forWhom="everyone with a role in a project" />
  return <LabelPage content={await loadInstrumentLabel(reading, stream)} href={pathOf('instruments', stream)} />
}
