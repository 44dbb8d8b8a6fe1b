import Link from 'next/link'
import { notFound, redirect } from 'next/navigation'
import { FORMS } from '@/lib/capture/forms/form-table'
import type { RecordType } from '@/lib/domain/records/record'
import { sheetNumber } from '@/lib/domain/tally/sheet-number'
import { loadPointView } from '@/lib/server/views/point-view'
import { openReadingDesk } from '@/lib/server/views/reading-desk'

type Props = {
  params: Promise<{ number: string; point: string }>
  searchParams: Promise<{ attempt?: string; sheet?: string }>
}

export const metadata = { title: 'From a paper tally' }

/** Where a sheet's code leads: to the form that copies it, or to the choice among the forms of its point. */
export default async function TranscribePage({ params, searchParams }: Props) {
  const { number: raw, point: no } = await params
  const number = decodeURIComponent(raw)
  const asked = await searchParams
  const reading = await openReadingDesk()
  if (!reading) redirect('/sign-in')
  const view = await loadPointView(reading, number, no, asked.attempt ? Number(asked.attempt) : null)
  if (!view) notFound()
  const { attempt } = view.attempt
  const base = `/repairs/${encodeURIComponent(number)}/points/${no}`
  const sheet = asked.sheet ? sheetNumber({ repair: number, point: no, attempt }, asked.sheet) : null
  const href = (type: RecordType) =>
    `${base}/record/${type}?attempt=${attempt}&paper=${sheet === null ? 'other' : encodeURIComponent(asked.sheet ?? '')}`
  const planned = view.point.plan.records.map((one) => one.type)
  const [only, ...others] = planned
  if (only && others.length === 0 && view.mayRecord && view.mayAttach) redirect(href(only))
  return (
    <main className="page narrow" id="main">
      <div className="page-head">
        <div>
          <p className="eyebrow">
            <Link href={`${base}?attempt=${attempt}`}>‹ {number}</Link> · point {no} · attempt {attempt}
          </p>
          <h1>From a paper tally</h1>
          {sheet ? <p className="quiet">Sheet {sheet}</p> : null}
        </div>
      </div>
      {view.mayRecord && view.mayAttach ? (
        <section className="sheet">
          <h2>What stands on the paper?</h2>
          <p className="quiet">Each form is copied by itself. Keeper, place and scan are keyed once for the sheet.</p>
          <div className="row">
            {[...new Set<RecordType>([...planned, 'weep', 'stop', 'remark'])].map((type) => (
              <Link key={type} className={planned.includes(type) ? 'button' : 'button plain'} href={href(type)}>
                {FORMS[type].title}
              </Link>
            ))}
          </div>
        </section>
      ) : (
        <p className="note warn">
          <strong>Your role does not record here.</strong>
          <span>Give the sheet to someone of the crew, the inspection or the stores.</span>
        </p>
      )}
    </main>
  )
}
