import { requireDesk } from '@/app/_desk/require-desk'
import { LabelPage } from '@/app/_parts/label-page'
import { loadRepairLabel } from '@/lib/server/views/label-view'

export const metadata = { title: 'Label' }

export default async function RepairLabelPage({ params }: { params: Promise<{ number: string }> }) {
  const reading = await requireDesk()
  const number = decodeURIComponent((await params).number)
  return <LabelPage content={await loadRepairLabel(reading, number)} href={`/repairs/${encodeURIComponent(number)}`} />
}
