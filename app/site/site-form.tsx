'use client'
import { useMemo, useState } from 'react'
import type { CaptureContext } from '@/app/_capture/capture-context'
import { RecordForm } from '@/app/_capture/record-form'
import { keepRecord, type Saving } from '@/app/_capture/save-record'
import { PointLimits } from '@/app/_parts/point-limits'
import { RoomNote } from '@/app/_parts/room-note'
import { FORMS } from '@/lib/capture/forms/form-table'
import { type SitePlace, siteHref } from '@/lib/capture/site/site-address'
import { captureOnSite } from '@/lib/capture/site/site-state'
import type { SitePack } from '@/lib/domain/capture/site-pack'
import { PointRecord, RECORD_TYPES } from '@/lib/domain/records/record'
import { sheetNumber } from '@/lib/domain/tally/sheet-number'
import { goTo } from './use-place'
import type { Site } from './use-site'

type Props = { site: Site; pack: SitePack; place: SitePlace; point: string }

/** A point form on this device: the same form, limits and verdicts as on the page of the record. What is saved goes into the outbox. */
export function SiteForm({ site, pack, place, point }: Props) {
  const { page } = site
  // as when the form was opened: an entry of another window must not take the keyed values away
  const [entries] = useState(site.entries)
  const refused = entries.find((one) => one.id === place.again && one.state === 'refused')
  const ground = useMemo(
    () => captureOnSite(pack, entries, page.nowMs(), { point, attempt: place.attempt ?? 1, correcting: place.correct }),
    [pack, entries, page, point, place.attempt, place.correct],
  )
  const type = ground?.correcting?.record.type ?? RECORD_TYPES.find((one) => one === place.form)
  if (!ground || !type)
    return (
      <main className="page narrow" id="main">
        <p className="note warn">
          <strong>This form cannot open here.</strong>
          <a href={siteHref({ repair: pack.number, point })}>Back to point {point}</a>
        </p>
      </main>
    )
  const { correcting, ...drawn } = ground
  const attempt = correcting?.attempt ?? place.attempt ?? 1
  const back = siteHref({ repair: pack.number, point, attempt })
  const { utcOffset, clockKind, lateAfterMinutes } = pack
  const context: CaptureContext = { ...drawn, utcOffset, clockKind, lateAfterMinutes }
  const keyed = refused ? recordIn(refused.input.body) : null
  const sheetOf = { repair: pack.number, point, attempt }
  const paper = correcting || place.paper === null ? undefined : { sheet: sheetNumber(sheetOf, place.paper) ?? '' }
  return (
    <main className="page narrow" id="main">
      <div className="page-head">
        <div>
          <p className="eyebrow">
            <a href={back}>‹ {pack.number}</a> · point {point} · attempt {attempt}
          </p>
          <h1>
            {correcting ? 'Correct: ' : ''}
            {FORMS[type].title}
            {paper ? ', from paper' : ''}
          </h1>
          <PointLimits judge={ground.judge} />
        </div>
      </div>
      <div className="stack" style={{ marginBottom: 16 }}>
        <RoomNote room={site.room} isBrief />
      </div>
      {paper || correcting ? null : (
        <p style={{ marginBottom: 12 }}>
          <a className="button plain" href={siteHref({ ...sheetOf, form: type, paper: 'other' })}>
            From a paper tally
          </a>
        </p>
      )}
      <RecordForm
        key={paper ? 'paper' : 'seen'}
        paper={paper}
        type={type}
        target={{ repair: pack.number, point, attempt }}
        context={context}
        tenant={pack.tenant}
        me={pack.person}
        back={back}
        {...(correcting && place.correct ? { initial: correcting.record, replaces: place.correct } : {})}
        {...(keyed ? { initial: keyed } : {})}
        onSite={{
          keep: (saving: Saving) => keepRecord(saving, page, refused?.id ?? null),
          leave: () => goTo(back),
        }}
      />
    </main>
  )
}

function recordIn(body: unknown): PointRecord | null {
  const record =
    body !== null && typeof body === 'object' && 'record' in body ? PointRecord.safeParse(body.record) : null
  return record?.success ? record.data : null
}
