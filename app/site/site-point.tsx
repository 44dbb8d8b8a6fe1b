'use client'
import { lazy, Suspense, useMemo } from 'react'
import { LiveVerdicts } from '@/app/_capture/live-verdicts'
import { RecordList } from '@/app/_parts/record-list'
import { RoomNote } from '@/app/_parts/room-note'
import { AttemptMark } from '@/app/_ui/attempt-mark'
import { VerdictMark } from '@/app/_ui/verdict-mark'
import { FORMS } from '@/lib/capture/forms/form-table'
import { type SitePlace, siteHref } from '@/lib/capture/site/site-address'
import { stateOnSite } from '@/lib/capture/site/site-state'
import type { SitePack } from '@/lib/domain/capture/site-pack'
import type { AttemptState, PointState } from '@/lib/domain/fold/repair-state'
import { mayAct } from '@/lib/domain/permissions'
import { SitePhotos } from './site-photos'
import type { Site } from './use-site'

/** Keys, signing and deciding have a program of their own: capture waits for none of it. */
const SiteActs = lazy(async () => ({ default: (await import('./site-acts')).SiteActs }))

const ALWAYS = ['weep', 'stop', 'remark'] as const

type Props = { site: Site; pack: SitePack; place: SitePlace; point: string }

/** One point of a pinned repair: its forms, its photos, how it stands against the specification, and what is recorded, sent or not. */
export function SitePoint({ site, pack, place, point: no }: Props) {
  const { entries, page } = site
  const folded = useMemo(() => stateOnSite(pack, entries, page.nowMs()), [pack, entries, page])
  const point = folded.state.points.find((one) => one.no === no)
  const attempt = point?.attempts.find((one) => one.attempt === place.attempt) ?? point?.current
  if (!point || !attempt)
    return (
      <main className="page narrow" id="main">
        <p className="note warn">
          <strong>The plan has no point {no}.</strong>
          <a href={siteHref({ repair: pack.number })}>Back to {pack.number}</a>
        </p>
      </main>
    )
  const isLatest = attempt === point.current
  return (
    <main className="page narrow" id="main">
      <Head pack={pack} point={point} attempt={attempt} />
      <div className="stack">
        <RoomNote room={site.room} isBrief />
        {point.blockedBy.length > 0 && isLatest ? (
          <p className="note warn">
            <strong>
              Closed: {point.blockedBy.length === 1 ? 'point' : 'points'} {point.blockedBy.join(', ')}{' '}
              {point.blockedBy.length === 1 ? 'is' : 'are'} not released and valid, as far as this device knows.
            </strong>
            <span>What is observed all the same is kept, with a finding.</span>
          </p>
        ) : null}
        {isLatest && mayAct('enter-record', pack.roles) === 'may' ? (
          <Forms number={pack.number} point={point} attempt={attempt} paper={place.paper} />
        ) : null}
        {isLatest && mayAct('attach-photo', pack.roles) === 'may' ? (
          <SitePhotos site={site} pack={pack} point={point} attempt={attempt} />
        ) : null}
        <section className="sheet">
          <h2>Against the specification</h2>
          <LiveVerdicts results={attempt.criteria} />
        </section>
        <section className="sheet">
          <h2>As recorded</h2>
          <RecordList
            attempt={attempt}
            names={folded.names}
            me={pack.person}
            unsent={folded.unsent}
            correct={(fact) => (
              <a
                className="button plain"
                href={siteHref({ repair: pack.number, point: point.no, attempt: attempt.attempt, correct: fact })}
              >
                Correct an error in it
              </a>
            )}
          />
        </section>
        <Suspense fallback={<p className="quiet">Opening what may be signed here.</p>}>
          <SiteActs site={site} pack={pack} folded={folded} point={point} attempt={attempt} />
        </Suspense>
      </div>
    </main>
  )
}

function Head({ pack, point, attempt }: { pack: SitePack; point: PointState; attempt: AttemptState }) {
  return (
    <div className="page-head">
      <div>
        <p className="eyebrow">
          <a href={siteHref({ repair: pack.number })}>‹ {pack.number}</a> · point {point.no} · attempt {attempt.attempt}{' '}
          of {point.attempts.length}
        </p>
        <h1>{point.plan.title}</h1>
      </div>
      <div className="row">
        {attempt.records.length > 0 ? (
          <VerdictMark verdict={attempt.verdict} conceded={attempt.conceded !== null} />
        ) : null}
        <AttemptMark state={attempt.state} />
      </div>
    </div>
  )
}

function Forms({
  number,
  point,
  attempt,
  paper,
}: {
  number: string
  point: PointState
  attempt: AttemptState
  paper: string | null
}) {
  const at = { repair: number, point: point.no, attempt: attempt.attempt, paper }
  return (
    <section className="sheet">
      <h2>{paper === null ? 'Record' : 'Record, from the paper tally'}</h2>
      <div className="row">
        {point.plan.records.map(({ type, atLeast }) => (
          <a key={type} className="button" href={siteHref({ ...at, form: type })}>
            {FORMS[type].title}
            {atLeast > 0 ? ` (${attempt.records.filter((one) => one.record.type === type).length} of ${atLeast})` : ''}
          </a>
        ))}
        {ALWAYS.filter((type) => !point.plan.records.some((one) => one.type === type)).map((type) => (
          <a
            key={type}
            className={`button ${type === 'remark' ? 'plain' : 'stop'}`}
            href={siteHref({ ...at, form: type })}
          >
            {FORMS[type].title}
          </a>
        ))}
      </div>
    </section>
  )
}
