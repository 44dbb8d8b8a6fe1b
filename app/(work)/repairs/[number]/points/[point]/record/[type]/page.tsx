import Link from 'next/link'
import { notFound, redirect } from 'next/navigation'
import { RecordFormLater } from '@/app/_capture/record-form-later'
import { PointLimits } from '@/app/_parts/point-limits'
import { FORMS } from '@/lib/capture/forms/form-table'
import { RECORD_TYPES } from '@/lib/domain/records/record'
import { sheetNumber } from '@/lib/domain/tally/sheet-number'
import { loadCaptureView } from '@/lib/server/views/capture-view'
import { openReadingDesk } from '@/lib/server/views/reading-desk'

type Props = {
  params: Promise<{ number: string; point: string; type: string }>
  searchParams: Promise<{ attempt?: string; paper?: string }>
}

export default async function RecordPage({ params, searchParams }: Props) {
  const reading = await openReadingDesk()
  if (!reading) redirect('/sign-in')
  const { number: raw, point, type: rawType } = await params
  const number = decodeURIComponent(raw)
  const type = RECORD_TYPES.find((one) => one === rawType)
  const asked = await searchParams
  const attempt = Number(asked.attempt ?? '1')
  const view = type ? await loadCaptureView(reading, number, point, attempt, null) : null
  if (!type || !view) notFound()
  const back = `/repairs/${encodeURIComponent(number)}/points/${point}?attempt=${attempt}`
  const { correcting: _, ...context } = view
  const stamp = asked.paper ?? ''
  const paper = stamp === '' ? undefined : { sheet: sheetNumber({ repair: number, point, attempt }, stamp) ?? '' }
  return (
    <main className="page narrow" id="main">
      <div className="page-head">
        <div>
          <p className="eyebrow">
            <Link href={back}>‹ {number}</Link> · point {point} · attempt {attempt}
          </p>
          <h1>
            {FORMS[type].title}
            {paper ? ', from paper' : ''}
          </h1>
          <PointLimits judge={view.judge} />
        </div>
      </div>
      {paper ? null : (
        <p style={{ marginBottom: 12 }}>
          <Link
            className="button plain"
            href={`/repairs/${encodeURIComponent(number)}/points/${point}/record/${type}?attempt=${attempt}&paper=other`}
          >
            From a paper tally
          </Link>
        </p>
      )}
      <RecordFormLater
        key={paper ? 'paper' : 'seen'}
        type={type}
        target={{ repair: number, point, attempt }}
        context={context}
        tenant={reading.actor.tenant}
        me={reading.actor.person}
        back={back}
        paper={paper}
      />
    </main>
  )
}
