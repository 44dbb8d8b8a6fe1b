import { instantOf, type Moment, momentOf } from '@/lib/domain/time'

/** UTC offset of the demo's site. */
export const DEMO_OFFSET = '+01:00'

/** The present of a demo store when it starts. */
export const DEMO_START: Moment = '2026-05-29T08:00:00+01:00'

/** A moment of 2026 at the site: `at('05-12', '09:22')`; seconds where they were taken. */
export function at(day: string, clock: string): Moment {
  return `2026-${day}T${clock.length === 5 ? `${clock}:00` : clock}${DEMO_OFFSET}`
}

/** A moment some seconds later (or earlier), at the site's offset. */
export function secondsAfter(moment: Moment, seconds: number): Moment {
  return momentOf(instantOf(moment) + seconds * 1000, DEMO_OFFSET)
}
