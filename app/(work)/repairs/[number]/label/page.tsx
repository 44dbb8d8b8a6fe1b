import Link from 'next/link'
import { notFound } from 'next/navigation'
import { requireDesk } from '@/app/_desk/require-desk'
import { LabelPrint } from '@/app/_parts/label-print'
import { loadRepairLabel } from '@/lib/server/views/label-view'

export const metadata = { title: 'Label' }

export default async function RepairLabelPage({ params }: { params: Promise<{ number: string }> }) {
  const reading = await requireDesk()
  const number = decodeURIComponent((await params).number)
  const content = await loadRepairLabel(reading, number)
  if (!content) notFound()
  return (
    <main className="page narrow stack label-page" id="main">
      <div className="page-head no-print">
        <div>
          <p className="eyebrow">
            <Link href={`/repairs/${encodeURIComponent(number)}`}>{content.title}</Link>
          </p>
          <h1>Label</h1>
        </div>
      </div>
      <LabelPrint content={content} />
    </main>
  )
}
