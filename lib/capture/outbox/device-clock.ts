import * as z from 'zod'
import { instantOf, type Moment } from '@/lib/domain/time'

/** The server tells whole seconds, cut off: on average half a second ago. */
const CUT_OFF_MS = 500
/** A clock that moved by no more than this, beyond what the measurements explain, runs as clocks do. */
export const DRIFT_MS = 2000
const FAR_OFF_MS = 60_000

/**
 * The device's clock against the server's at the last contact. `offsetMs` is positive when the device runs ahead, and zero where the measurement cannot tell it from
 * zero. `drift` names the offset before, when it moved by more than both measurements explain: a clock that was set, or runs wrong.
 */
export const ClockStanding = z.lazy(() =>
  z.object({
    offsetMs: z.int(),
    uncertainMs: z.int(),
    measuredAt: z.number(),
    isFarOff: z.boolean(),
    drift: z.object({ fromMs: z.int(), toMs: z.int() }).nullable(),
  }),
)
export type ClockStanding = z.infer<typeof ClockStanding>

/** Measure the clock by one exchange: sent and got by the device's clock, the server's time in between, the way there taken as long as the way back. */
export function measureClock(
  exchange: { sentMs: number; gotMs: number; serverNow: Moment },
  before: ClockStanding | null,
): ClockStanding {
  const { sentMs, gotMs, serverNow } = exchange
  const uncertainMs = Math.ceil(Math.max(0, gotMs - sentMs) / 2 + CUT_OFF_MS)
  const measuredMs = Math.round((sentMs + gotMs) / 2 - (instantOf(serverNow) + CUT_OFF_MS))
  const offsetMs = Math.abs(measuredMs) <= uncertainMs ? 0 : measuredMs
  const hasMoved = before !== null && Math.abs(offsetMs - before.offsetMs) > uncertainMs + before.uncertainMs + DRIFT_MS
  return {
    offsetMs,
    uncertainMs,
    measuredAt: gotMs,
    isFarOff: Math.abs(offsetMs) > FAR_OFF_MS,
    drift: hasMoved ? { fromMs: before.offsetMs, toMs: offsetMs } : null,
  }
}
