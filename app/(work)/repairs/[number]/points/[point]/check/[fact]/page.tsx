import Link from 'next/link'
import { notFound } from 'next/navigation'
import { requireDesk } from '@/app/_desk/require-desk'
import { GridTable } from '@/app/_parts/grid-table'
import { RecordValues } from '@/app/_parts/record-values'
import { CheckForm } from '@/app/_tally/check-form'
import { PaperNote } from '@/app/_tally/paper-note'
import { FORMS } from '@/lib/capture/forms/form-table'
import { mayAct } from '@/lib/domain/permissions'
import { surfaceMapOf } from '@/lib/domain/pictures/surface-map-of'
import { loadPointView } from '@/lib/server/views/point-view'

export const metadata = { title: 'Check against the paper' }

export default async function CheckPage({
  params,
}: {
  params: Promise<{ number: string; point: string; fact: string }>
}) {
  const reading = await requireDesk()
  const { number: raw, point: no, fact } = await params
  const number = decodeURIComponent(raw)
  const view = await loadPointView(reading, number, no, null)
  const found = view?.point.attempts.flatMap((attempt) =>
    attempt.records.filter((one) => one.fact.id === fact).map((copy) => ({ attempt, copy })),
  )[0]
  if (!view || !found?.copy.transcription) notFound()
  const { attempt, copy } = found
  const { transcription } = found.copy
  const back = `/repairs/${encodeURIComponent(number)}/points/${no}?attempt=${attempt.attempt}`
  const map = surfaceMapOf(copy, attempt, view.state)
  const isCopier = transcription.copiedBy.includes(view.me)
  return (
    <main className="page" id="main">
      <div className="page-head">
        <div>
          <p className="eyebrow">
            <Link href={back}>‹ {number}</Link> · point {no} · attempt {attempt.attempt}
          </p>
          <h1>Against the paper: {FORMS[copy.record.type].title}</h1>
        </div>
      </div>
      <div className="two check-paper">
        <section className="sheet">
          <h2>Scan of the paper</h2>
          {transcription.scan && transcription.paper.tally ? (
            <>
              <a href={`/api/photos/${transcription.paper.tally}/rendition`} target="_blank" rel="noreferrer">
                {/* A photo of the record by its digest: the framework's image service may not keep it. */}
                {/* biome-ignore lint/performance/noImgElement: see above */}
                <img
                  className="scan-large"
                  src={`/api/photos/${transcription.paper.tally}/rendition`}
                  alt={`Scan of the tally sheet ${transcription.paper.sheet ?? ''}`}
                />
              </a>
              <p className="row">
                <a className="button plain" href={`/api/photos/${transcription.paper.tally}/original`}>
                  The original file
                </a>
                <span className="quiet small">
                  Tap the scan to see it alone, as large as it is. Where it cannot be read, look at the paper itself.
                </span>
              </p>
            </>
          ) : (
            <p className="note refused">
              <strong>No scan is attached.</strong>
              <span>Look at the paper itself: its keeper and place are beside.</span>
            </p>
          )}
        </section>
        <section className="sheet stack">
          <h2>As transcribed</h2>
          <PaperNote copy={copy} names={view.names} />
          <RecordValues record={copy.record} names={view.names} />
          {map ? <GridTable grid={map.grid} readings={map.readings} /> : null}
          {isCopier ? (
            <p className="note warn">
              <strong>You entered or corrected this copy.</strong>
              <span>Another person compares it with the paper.</span>
            </p>
          ) : mayAct('check-transcription', view.roles) === 'may' ? (
            <CheckForm
              stream={view.state.stream}
              body={{
                point: no,
                attempt: attempt.attempt,
                record: copy.fact.id,
                corrections: copy.corrections.map((one) => one.id),
              }}
              back={back}
            />
          ) : (
            <p className="note">Your role reads this record and does not check it.</p>
          )}
        </section>
      </div>
    </main>
  )
}
