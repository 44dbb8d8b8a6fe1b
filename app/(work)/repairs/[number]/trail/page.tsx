import Link from 'next/link'
import { notFound, redirect } from 'next/navigation'
import { showMoment } from '@/lib/domain/time'
import { openReadingDesk } from '@/lib/server/views/reading-desk'
import { loadTrailView } from '@/lib/server/views/trail-view'
import { ToldUnasked } from './told-unasked'
import { TrailRows } from './trail-rows'

export const metadata = { title: 'Trail' }

export default async function TrailPage({ params }: { params: Promise<{ number: string }> }) {
  const reading = await openReadingDesk()
  if (!reading) redirect('/sign-in')
  const number = decodeURIComponent((await params).number)
  const view = await loadTrailView(reading, number)
  if (!view) notFound()
  const last = view.lines.at(-1)
  return (
    <main className="page stack" id="main">
      <div className="page-head">
        <div>
          <p className="eyebrow">
            <Link href={`/repairs/${encodeURIComponent(number)}`}>‹ {number}</Link>
          </p>
          <h1>Trail</h1>
        </div>
        <p className="quiet">
          {view.lines.length} facts in order of receipt
          {last?.receivedAt ? `, the last ${showMoment(last.receivedAt)}` : ''}. Nothing here can be edited or deleted.
        </p>
      </div>
      <ToldUnasked groups={view.told} mayAudit={view.mayAudit} />
      <TrailRows lines={view.lines} mayAudit={view.mayAudit} />
    </main>
  )
}
