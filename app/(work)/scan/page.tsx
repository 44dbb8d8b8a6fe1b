import { redirect } from 'next/navigation'
import { BarredNote } from '@/app/_desk/barred-note'
import { mayReadStores, requireDesk } from '@/app/_desk/require-desk'
import { LabelAsker } from '@/app/_parts/label-asker'
import { LabelFound } from '@/app/_parts/label-found'
import { transcribePathIn } from '@/lib/domain/tally/sheet-number'
import { loadScanView } from '@/lib/server/views/scan-view'

export const metadata = { title: 'Scan a label' }

export default async function ScanPage({ searchParams }: { searchParams: Promise<{ label?: string | string[] }> }) {
  const reading = await requireDesk()
  if (!mayReadStores(reading)) return <BarredNote title="Scan a label" forWhom="everyone with a role in a project" />
  const { label } = await searchParams
  const text = typeof label === 'string' ? label : ''
  const sheet = transcribePathIn(text)
  if (sheet) redirect(sheet)
  const view = text === '' ? null : await loadScanView(reading, text)
  return (
    <main className="page narrow stack" id="main">
      <div className="page-head">
        <div>
          <p className="eyebrow">Which one is this?</p>
          <h1>Scan a label</h1>
        </div>
      </div>
      {view ? <LabelFound view={view} text={text} /> : null}
      <LabelAsker key={text} />
    </main>
  )
}
