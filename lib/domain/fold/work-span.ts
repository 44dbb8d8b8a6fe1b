import type { PointRecord } from '../records/record'
import { instantOf, type Moment } from '../time'

/** Fields that state when something was done or seen; a time until which something may be used is none of them. */
const TIME_FIELDS: ReadonlySet<string> = new Set([
  'startedAt',
  'endedAt',
  'kneadStart',
  'kneadEnd',
  'pressedAt',
  'bandTightAt',
  'judgedHardAt',
  'placedAt',
  'measuredAt',
  'takenAt',
  'seenAt',
  'dripSeenAt',
  'brushedAt',
  'soakStart',
  'wrapStart',
  'wrapEnd',
  'countedAt',
  'checkedAt',
  'finishedAt',
  'handedAt',
  'at',
])

/** Records that state an event or a note: they are no work at the point. */
export const EVENT_RECORDS: ReadonlySet<PointRecord['type']> = new Set(['stop', 'weep', 'remark'])

/** First and last time that a record states for itself; the fact's observed time where it states none. */
export function workSpan(record: PointRecord, observedAt: Moment): { from: Moment; to: Moment } {
  const times: Moment[] = []
  gatherTimes(record, times)
  return { from: earliest(times) ?? observedAt, to: latest(times) ?? observedAt }
}

function gatherTimes(value: object, times: Moment[]): void {
  for (const name of Object.keys(value)) {
    const one: unknown = value[name as keyof typeof value]
    if (typeof one === 'string') {
      if (TIME_FIELDS.has(name)) times.push(one)
    } else if (one !== null && typeof one === 'object') gatherTimes(one, times)
  }
}

/** The earliest of moments by instant, or null of none. */
export function earliest(moments: readonly Moment[]): Moment | null {
  return moments.reduce<Moment | null>(
    (first, one) => (first === null || instantOf(one) < instantOf(first) ? one : first),
    null,
  )
}

/** The latest of moments by instant, or null of none. */
export function latest(moments: readonly Moment[]): Moment | null {
  return moments.reduce<Moment | null>(
    (last, one) => (last === null || instantOf(one) > instantOf(last) ? one : last),
    null,
  )
}

/** Whether one moment is at or before another. */
export function isAtOrBefore(a: Moment, b: Moment): boolean {
  return instantOf(a) <= instantOf(b)
}
