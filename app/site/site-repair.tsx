'use client'
import { lazy, Suspense, useMemo, useState } from 'react'
import { Ladder } from '@/app/_parts/ladder'
import { RepairHead } from '@/app/_parts/repair-head'
import { RoomNote } from '@/app/_parts/room-note'
import { siteHref } from '@/lib/capture/site/site-address'
import { stateOnSite } from '@/lib/capture/site/site-state'
import type { SitePack } from '@/lib/domain/capture/site-pack'
import { closingPoint, isClosingRecorded } from '@/lib/domain/fold/closing-point'
import { mayAct } from '@/lib/domain/permissions'
import { instantOf, showMoment } from '@/lib/domain/time'
import type { Site } from './use-site'

/** Drawn when asked for: their program is no part of what the ladder waits for. */
const SiteMaps = lazy(async () => ({ default: (await import('./site-maps')).SiteMaps }))

const SiteAcceptance = lazy(async () => ({ default: (await import('./site-acceptance')).SiteAcceptance }))

const SiteAccept = lazy(async () => ({ default: (await import('./site-accept')).SiteAccept }))

/** A pinned repair: its points in order, folded from what this device took along and captured since. */
export function SiteRepair({ site, pack }: { site: Site; pack: SitePack }) {
  const { entries, page } = site
  const [areMapsShown, setMapsShown] = useState(false)
  const folded = useMemo(() => stateOnSite(pack, entries, page.nowMs()), [pack, entries, page])
  const { state, names, unsent, asOf } = folded
  const closing = closingPoint(state)
  return (
    <main className="page" id="main">
      <p className="eyebrow">
        <a href={siteHref({})}>‹ On this device</a>
      </p>
      <RepairHead state={state} />
      <div className="stack">
        <RoomNote room={site.room} isBrief />
        <p className="quiet small">
          {site.openedHere.has(pack.number)
            ? 'Opened on this device'
            : `As the server knew it ${showMoment(pack.takenAt)}`}
          {unsent.size > 0
            ? `, with ${unsent.size} ${unsent.size === 1 ? 'entry' : 'entries'} of this device that ${unsent.size === 1 ? 'is' : 'are'} not yet sent.`
            : '.'}
        </p>
        <Ladder
          number={state.number}
          points={state.points}
          windows={state.windows}
          names={names}
          nowMs={instantOf(asOf)}
          hrefOf={(point, attempt) => siteHref({ repair: state.number, point, attempt })}
        />
        {state.acceptance && closing ? (
          <Suspense fallback={null}>
            <SiteAcceptance
              site={site}
              pack={pack}
              folded={folded}
              acceptance={state.acceptance}
              attempt={closing.current}
            />
          </Suspense>
        ) : closing && isClosingRecorded(closing) && mayAct('accept-repair', pack.roles) === 'may' ? (
          <Suspense fallback={null}>
            <SiteAccept site={site} pack={pack} state={state} attempt={closing.current} />
          </Suspense>
        ) : null}
        {areMapsShown ? (
          <Suspense fallback={<p className="quiet">Drawing the maps.</p>}>
            <SiteMaps state={state} />
          </Suspense>
        ) : (
          <button type="button" className="button plain" onClick={() => setMapsShown(true)}>
            Show surface maps and plots
          </button>
        )}
      </div>
    </main>
  )
}
