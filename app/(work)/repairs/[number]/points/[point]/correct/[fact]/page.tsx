import Link from 'next/link'
import { notFound, redirect } from 'next/navigation'
import { RecordFormLater } from '@/app/_capture/record-form-later'
import { FORMS } from '@/lib/capture/forms/form-table'
import { loadCaptureView } from '@/lib/server/views/capture-view'
import { openReadingDesk } from '@/lib/server/views/reading-desk'

export const metadata = { title: 'Correct an entry' }

export default async function CorrectPage({
  params,
}: {
  params: Promise<{ number: string; point: string; fact: string }>
}) {
  const reading = await openReadingDesk()
  if (!reading) redirect('/sign-in')
  const { number: raw, point, fact } = await params
  const number = decodeURIComponent(raw)
  const view = await loadCaptureView(reading, number, point, 1, fact)
  if (!view?.correcting) notFound()
  const { correcting, ...context } = view
  const back = `/repairs/${encodeURIComponent(number)}/points/${point}?attempt=${correcting.attempt}`
  return (
    <main className="page narrow" id="main">
      <div className="page-head">
        <div>
          <p className="eyebrow">
            <Link href={back}>‹ {number}</Link> · point {point} · attempt {correcting.attempt}
          </p>
          <h1>Correct: {FORMS[correcting.record.type].title}</h1>
        </div>
      </div>
      <div className="note warn" style={{ marginBottom: 16 }}>
        <strong>For your own error in keying only.</strong>
        <span>
          The old value stays readable, and signatures over it break. A second measurement is a new record, never a
          correction.
        </span>
      </div>
      <RecordFormLater
        type={correcting.record.type}
        target={{ repair: number, point, attempt: correcting.attempt }}
        context={context}
        tenant={reading.actor.tenant}
        me={reading.actor.person}
        back={back}
        initial={correcting.record}
        replaces={fact}
      />
    </main>
  )
}
