import { compareFractions, type Fraction, toNumber } from '../decimal'
import type { FactId } from '../facts/fact'
import { type Measured, showReadingUnit } from '../reading'
import { instantOf } from '../time'
import { type JudgeFrame, recordsOfType } from './frame'
import { celsiusOf } from './yield-surface'

export type CurePoint = { atMs: number; temp: Fraction; shown: string; fact: FactId | null }
/** All that was logged at one clock position, in stretches that were logged without a break. */
export type CurePosition = { clock: string; stretches: CurePoint[][] }

/**
 * What was logged at each clock position in this attempt's cure. Post-cure is further heating after the cure: it counts only where nothing else was logged.
 * Two series are one stretch when the second starts before the first has ended.
 */
export function curePositions(frame: { context: Pick<JudgeFrame['context'], 'records'> }): CurePosition[] {
  const cures = recordsOfType(frame.context.records, 'cure')
  const cure = cures.filter(({ record }) => record.postCure !== 'yes')
  const positions = new Map<string, CurePoint[][]>()
  for (const { record, judged } of cure.length > 0 ? cure : cures) {
    for (const probe of record.probes ?? []) {
      const clock = probe.clock ?? probe.place ?? '?'
      const points = (probe.series ?? [])
        .flatMap((one) => pointOf(one.at, one.reading, judged.fact))
        .sort((a, b) => a.atMs - b.atMs)
      if (points.length > 0) positions.set(clock, [...(positions.get(clock) ?? []), points])
    }
  }
  return [...positions].map(([clock, series]) => ({ clock, stretches: joined(series) }))
}

function pointOf(at: string | undefined, reading: Measured | undefined, fact: FactId | null): CurePoint[] {
  const temp = celsiusOf(reading)
  return at && reading && temp ? [{ atMs: instantOf(at), temp, shown: showReadingUnit(reading), fact }] : []
}

function joined(series: readonly CurePoint[][]): CurePoint[][] {
  const stretches: CurePoint[][] = []
  for (const points of series.toSorted((a, b) => (a[0]?.atMs ?? 0) - (b[0]?.atMs ?? 0))) {
    const last = stretches.at(-1)
    const end = last?.at(-1)
    const start = points[0]
    if (last && end && start && start.atMs <= end.atMs)
      last.splice(0, last.length, ...[...last, ...points].sort((a, b) => a.atMs - b.atMs))
    else stretches.push([...points])
  }
  return stretches
}

/** The coldest point of a position. */
export function coldestOf({ stretches }: CurePosition): CurePoint | null {
  return stretches
    .flat()
    .reduce<CurePoint | null>(
      (coldest, one) => (coldest && compareFractions(coldest.temp, one.temp) <= 0 ? coldest : one),
      null,
    )
}

/** Longest unbroken time at or above a temperature, ms: temperature runs linearly between logged points. One point alone is no time. */
export function longestHoldMs(position: CurePosition, least: Fraction): number {
  return Math.max(
    0,
    ...position.stretches.flatMap((points) => holdsOf(points, least).map(({ fromMs, toMs }) => toMs - fromMs)),
  )
}

/** Every unbroken time of a stretch at or above a temperature, in order. */
export function holdsOf(points: readonly CurePoint[], least: Fraction): { fromMs: number; toMs: number }[] {
  const holds: { fromMs: number; toMs: number }[] = []
  let since: number | null = null
  points.forEach((point, index) => {
    const before = points[index - 1]
    const isWarm = compareFractions(point.temp, least) >= 0
    if (isWarm && since === null) since = before ? crossing(before, point, least) : point.atMs
    if (isWarm || since === null) return
    holds.push({ fromMs: since, toMs: before ? crossing(before, point, least) : point.atMs })
    since = null
  })
  const last = points.at(-1)
  return since === null || !last ? holds : [...holds, { fromMs: since, toMs: last.atMs }]
}

function crossing(a: CurePoint, b: CurePoint, least: Fraction): number {
  const share = (toNumber(least) - toNumber(a.temp)) / (toNumber(b.temp) - toNumber(a.temp))
  return a.atMs + share * (b.atMs - a.atMs)
}
