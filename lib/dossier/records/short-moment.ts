import { type Moment, showClock } from '@/lib/domain/time'

/** Month, day and clock time as observed, `05-19 11:24`; for tables whose offset is stated beside them. */
export function shortMoment(moment: Moment): string {
  return `${moment.slice(5, 10)} ${showClock(moment)}`
}
