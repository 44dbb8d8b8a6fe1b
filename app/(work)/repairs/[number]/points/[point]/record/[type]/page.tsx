import Link from 'next/link'
import { notFound, redirect } from 'next/navigation'
import { RecordFormLater } from '@/app/_capture/record-form-later'
import { PointLimits } from '@/app/_parts/point-limits'
import { FORMS } from '@/lib/capture/forms/form-table'
import { RECORD_TYPES } from '@/lib/domain/records/record'
import { loadCaptureView } from '@/lib/server/views/capture-view'
import { openReadingDesk } from '@/lib/server/views/reading-desk'

type Props = {
  params: Promise<{ number: string; point: string; type: string }>
  searchParams: Promise<{ attempt?: string }>
}

export default async function RecordPage({ params, searchParams }: Props) {
  const reading = await openReadingDesk()
  if (!reading) redirect('/sign-in')
  const { number: raw, point, type: rawType } = await params
  const number = decodeURIComponent(raw)
  const type = RECORD_TYPES.find((one) => one === rawType)
  const attempt = Number((await searchParams).attempt ?? '1')
  const view = type ? await loadCaptureView(reading, number, point, attempt, null) : null
  if (!type || !view) notFound()
  const back = `/repairs/${encodeURIComponent(number)}/points/${point}?attempt=${attempt}`
  const { correcting: _, ...context } = view
  return (
    <main className="page narrow" id="main">
      <div className="page-head">
        <div>
          <p className="eyebrow">
            <Link href={back}>‹ {number}</Link> · {point} · attempt {attempt}
          </p>
          <h1>{FORMS[type].title}</h1>
          <PointLimits judge={view.judge} />
        </div>
      </div>
      <RecordFormLater
        type={type}
        target={{ repair: number, point, attempt }}
        context={context}
        tenant={reading.actor.tenant}
        me={reading.actor.person}
        back={back}
      />
    </main>
  )
}
