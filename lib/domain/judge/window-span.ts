import { compareFractions, type Decimal, type Fraction, fractionOf } from '../decimal'
import type { FactId } from '../facts/fact'
import type { PointNo, Rule } from '../specification'
import { instantOf, type Moment } from '../time'
import type { JudgeFrame, Yielded } from './frame'
import { SPOILED_BY } from './quantity-names'

export type WindowRule = Extract<Rule, { kind: 'window' }>
export type TakenEvent = { name: string; at: Moment; fact: FactId | null; of?: string }

/** How a window stands on observed times: its events, the time between them, and what spoiled it. */
export type WindowSpan = {
  start: TakenEvent | null
  end: TakenEvent | null
  /** Milliseconds from start to end, or to `asOf` while there is no end; null without a start. */
  elapsedMs: number | null
  /** The same with each device's known clock error taken off. */
  correctedMs: number | null
  spoiledBy: TakenEvent | null
}

/**
 * Read a window's events. They come from this attempt, else from the latest attempt of the point that the rule names (or of any other point that has
 * them). `first-` events take the earliest, `last-` the latest, others the earliest at or after the start; `latest` takes the last start before the end.
 */
export function windowSpan(rule: WindowRule, frame: JudgeFrame): WindowSpan {
  const starts = eventsNamed(frame, rule.start, rule.startPoint)
  const ends = eventsNamed(frame, rule.end, rule.endPoint)
  const endNow = rule.pick === 'latest' ? pickEnd(rule.end, ends, null) : null
  const start = rule.pick === 'latest' ? latestBefore(starts, endNow) : pickStart(rule.start, starts)
  const end = endNow ?? pickEnd(rule.end, ends, start)
  if (!start) return { start, end, elapsedMs: null, correctedMs: null, spoiledBy: null }
  const elapsedMs = instantOf(end?.at ?? frame.context.asOf) - instantOf(start.at)
  const correctedMs = elapsedMs - (clockError(frame, end) - clockError(frame, start))
  const spoils = (SPOILED_BY[rule.start] ?? []).flatMap((name) => eventsNamed(frame, name, rule.startPoint))
  return { start, end, elapsedMs, correctedMs, spoiledBy: earliest(spoils.filter((one) => isWithin(one, start, end))) }
}

/** Compare a span of milliseconds with a limit in minutes, exactly. */
export function compareMinutes(ms: number, minutes: Decimal): number {
  return compareFractions(minutesOf(ms), fractionOf(minutes))
}

/** Minutes of a span as an exact fraction. */
export function minutesOf(ms: number): Fraction {
  return { numerator: BigInt(ms), denominator: 60_000n }
}

function eventsNamed(frame: JudgeFrame, name: string, point: PointNo | undefined): TakenEvent[] {
  const own = point === undefined || point === frame.criterion.point ? namedIn(frame.own, name) : []
  if (own.length > 0) return own
  const others = frame.others().filter(({ judged }) => point === undefined || judged.point === point)
  const holding = others.filter(({ yields }) => yields.events.some((event) => event.name === name))
  const latestAttempt = new Map<PointNo, number>()
  for (const { judged } of holding)
    latestAttempt.set(judged.point, Math.max(judged.attempt, latestAttempt.get(judged.point) ?? 0))
  return namedIn(
    holding.filter(({ judged }) => judged.attempt === latestAttempt.get(judged.point)),
    name,
  )
}

function namedIn(list: readonly Yielded[], name: string): TakenEvent[] {
  return list.flatMap(({ judged, yields }) =>
    yields.events.filter((event) => event.name === name).map((event) => ({ ...event, fact: judged.fact })),
  )
}

function pickStart(name: string, events: readonly TakenEvent[]): TakenEvent | null {
  return name.startsWith('last-') ? latest(events) : earliest(events)
}

function pickEnd(name: string, events: readonly TakenEvent[], start: TakenEvent | null): TakenEvent | null {
  if (name.startsWith('last-')) return latest(events)
  if (name.startsWith('first-') || !start) return earliest(events)
  return earliest(events.filter((one) => instantOf(one.at) >= instantOf(start.at))) ?? earliest(events)
}

function latestBefore(events: readonly TakenEvent[], end: TakenEvent | null): TakenEvent | null {
  return latest(end ? events.filter((one) => instantOf(one.at) <= instantOf(end.at)) : events)
}

function earliest(events: readonly TakenEvent[]): TakenEvent | null {
  return events.reduce<TakenEvent | null>(
    (best, one) => (best && instantOf(best.at) <= instantOf(one.at) ? best : one),
    null,
  )
}

function latest(events: readonly TakenEvent[]): TakenEvent | null {
  return events.reduce<TakenEvent | null>(
    (best, one) => (best && instantOf(best.at) >= instantOf(one.at) ? best : one),
    null,
  )
}

function isWithin(one: TakenEvent, start: TakenEvent, end: TakenEvent | null): boolean {
  return instantOf(one.at) >= instantOf(start.at) && (!end || instantOf(one.at) <= instantOf(end.at))
}

/** Known clock error of the device that took an event, ms, positive when the clock ran fast; zero where none is known. */
function clockError(frame: JudgeFrame, event: TakenEvent | null): number {
  return event?.fact ? (frame.context.clockErrors[event.fact] ?? 0) : 0
}
