'use client'
import { useState } from 'react'
import { PhotoTake } from '@/app/_capture/photo-take'
import { readNow } from '@/app/_capture/read-now'
import { NotSent } from '@/app/_parts/not-sent'
import { OutboxRefusal } from '@/app/_parts/outbox-refusal'
import { Glyph } from '@/app/_ui/glyph'
import { unsentPhotos } from '@/lib/capture/site/local-facts'
import type { SitePack } from '@/lib/domain/capture/site-pack'
import type { AttemptState, PointState } from '@/lib/domain/fold/repair-state'
import type { Site } from './use-site'

/** The photos that the plan demands at a point, taken into the outbox. One counts as in the record once the server has it. */
export function SitePhotos({
  site,
  pack,
  point,
  attempt,
}: {
  site: Site
  pack: SitePack
  point: PointState
  attempt: AttemptState
}) {
  const [refusal, setRefusal] = useState<{ code: string } | null>(null)
  const [caption, setCaption] = useState('')
  const unsent = unsentPhotos(site.entries, { stream: pack.stream, point: point.no, attempt: attempt.attempt })
  const keep = async (photo: Blob, shows: string, demand: string | null) => {
    const now = await readNow(pack.utcOffset, pack.clockKind)
    const kept = await site.page.capture({
      command: 'attach-photo',
      input: {
        stream: pack.stream,
        observedAt: now,
        enteredAt: now,
        body: { point: point.no, attempt: attempt.attempt, caption: shows, ...(demand ? { demand } : {}) },
      },
      photos: [photo],
    })
    setRefusal(kept.ok ? null : kept.error)
    if (kept.ok && !demand) setCaption('')
  }
  const free = unsent.get('') ?? []
  return (
    <section className="sheet">
      <div className="sheet-head">
        <h2>Photos</h2>
        <span className="quiet">{attempt.photos.length} in the record</span>
      </div>
      <div className="stack">
        {point.plan.photos.map((demand) => {
          const present = attempt.photos.filter(
            (one) => one.fact.body.demand === demand.id && one.judged?.body.decision !== 'not accepted',
          ).length
          const here = unsent.get(demand.id)?.length ?? 0
          return (
            <div key={demand.id} className="stack tight photo-demand">
              <span>
                <span className={`mark ${present + here >= demand.atLeast ? 'pass' : 'plain-state'}`}>
                  <Glyph name={present + here >= demand.atLeast ? 'pass' : 'open'} />
                </span>{' '}
                {demand.show}{' '}
                <span className="quiet">
                  {present + here} of {demand.atLeast}
                </span>
              </span>
              {here > 0 ? <NotSent /> : null}
              <PhotoTake
                label={demand.show}
                name={`Photo: ${demand.show}`}
                reviewsFiles
                take={(photo) => void keep(photo, demand.show, demand.id)}
              />
            </div>
          )
        })}
        <div className="stack tight">
          <label className="field">
            <span className="label">Another photo: what it shows, with board and scale in view</span>
            <input value={caption} onChange={(event) => setCaption(event.target.value)} />
          </label>
          {free.length > 0 ? <span className="quiet">{free.length} other on this device, not yet sent</span> : null}
          <PhotoTake
            label={caption}
            name="Another photo"
            isReady={caption.trim().length >= 3}
            reviewsFiles
            take={(photo) => void keep(photo, caption.trim(), null)}
          />
        </div>
        {refusal ? <OutboxRefusal refusal={refusal} /> : null}
      </div>
    </section>
  )
}
