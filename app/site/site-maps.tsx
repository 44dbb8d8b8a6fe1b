'use client'
import { RepairPlots } from '@/app/_parts/attempt-plots'
import { RepairMaps } from '@/app/_parts/repair-maps'
import { siteHref } from '@/lib/capture/site/site-address'
import type { RepairState } from '@/lib/domain/fold/repair-state'

/** The surface maps and plots of a pinned repair, drawn on this device from what it holds. A mark leads to its point here. */
export function SiteMaps({ state }: { state: RepairState }) {
  return (
    <div className="stack">
      <RepairMaps state={state} hrefOf={(point, attempt) => siteHref({ repair: state.number, point, attempt })} />
      <RepairPlots state={state} />
    </div>
  )
}
