import type { StreamId } from '@/lib/domain/facts/fact'
import { CalendarDay, type Moment } from '@/lib/domain/time'
import { streamNamed } from './audit-stream'

/** A sample as its form and its address write it. */
export type SampleParams = {
  seed?: string | undefined
  n?: string | undefined
  size?: string | undefined
  repair?: string | undefined
  point?: string | undefined
  from?: string | undefined
  to?: string | undefined
  series?: string | undefined
}
export type SampleFault = { field: keyof SampleParams; text: string }
/** What a sample asks for: how many, by which seed, of the readings among the first `size` leaves. */
export type SampleAsked = {
  seed: string | null
  count: number
  size: number
  repair: StreamId | null
  point: string | null
  from: Moment | null
  to: Moment | null
  withSeries: boolean
}

export const DRAWN_AT_MOST = 100
const DRAWN_UNLESS_SAID = 10
const SEED = /^[\x21-\x7e](?:[\x20-\x7e]{0,98}[\x21-\x7e])?$/

/** Read what a sample asks for. A part that cannot be so gives a fault; what is left empty is not asked. */
export function parseSample(
  params: SampleParams,
  utcOffset: string,
  sizeNow: number,
): { asked: SampleAsked; faults: SampleFault[] } {
  const faults: SampleFault[] = []
  const filled = (field: keyof SampleParams) => params[field]?.trim() || null
  const whole = (field: 'n' | 'size', unlessSaid: number, most: number, ofWhat: string) => {
    const text = filled(field)
    if (text === null) return unlessSaid
    const number = /^[0-9]{1,15}$/.test(text) ? Number(text) : 0
    if (number >= 1 && number <= most) return number
    faults.push({ field, text: `A whole number from 1 to ${most}: ${ofWhat}.` })
    return unlessSaid
  }
  const day = (field: 'from' | 'to', clock: string) => {
    const text = filled(field)
    const parsed = text ? CalendarDay.safeParse(text) : null
    if (parsed && !parsed.success) faults.push({ field, text: `“${text}” is no day.` })
    return parsed?.success ? `${parsed.data}T${clock}${utcOffset}` : null
  }
  const seed = filled('seed')
  if (seed !== null && !SEED.test(seed))
    faults.push({ field: 'seed', text: 'A seed is up to 100 plain letters, digits, signs and spaces.' })
  const named = filled('repair')
  const repair = named ? streamNamed('repair', named) : null
  if (named && !repair) faults.push({ field: 'repair', text: `“${named}” can be the number of no repair.` })
  return {
    asked: {
      seed,
      count: whole('n', DRAWN_UNLESS_SAID, DRAWN_AT_MOST, 'how many to draw'),
      size: whole('size', sizeNow, sizeNow, 'facts that the log has'),
      repair,
      point: filled('point'),
      from: day('from', '00:00:00'),
      to: day('to', '23:59:59.999'),
      withSeries: filled('series') === 'with',
    },
    faults,
  }
}
