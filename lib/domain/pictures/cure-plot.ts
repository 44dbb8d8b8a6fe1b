import { isAtLeast } from '@/lib/calc/comparison'
import { compareFractions, type Decimal, fractionOf, showDecimal, toNumber } from '../decimal'
import type { AttemptState } from '../fold/repair-state'
import {
  type CurePoint,
  type CurePosition,
  coldestOf,
  curePositions,
  holdsOf,
  longestHoldMs,
} from '../judge/cure-series'
import type { JudgedRecord } from '../judge/judge-context'
import { rowsOf } from '../judge/time-at-temperature'
import { celsiusOf } from '../judge/yield-surface'
import { showReadingUnit } from '../reading'
import type { RecordOf } from '../records/record'
import type { Rule } from '../specification'
import { instantOf } from '../time'
import { type CureCurve, cureCurve } from './cure-curve'
import { clockAt } from './plot-frame'

type CureRule = Extract<Rule, { kind: 'cure-hold' | 'cure-equivalent' }>

export type CureProbe = CurePosition & {
  lowest: CurePoint | null
  isColdest: boolean
  /** When this probe first met the rule; null when it has not, or when there is no rule. */
  metAtMs: number | null
  /** How far it came, in words: longest unbroken time, or the share of an equivalent cure. */
  reached: string
  curve: CureCurve | null
}

/** What the cure of an attempt looks like: probes, ambient, the rule, breaks, and when the rule was met at every probe. */
export type CurePlot = {
  title: string
  offset: string
  probes: CureProbe[]
  ambient: CurePoint[]
  rule: CureRule | null
  breaks: { fromMs: number; toMs: number; why: string }[]
  metAtMs: number | null
  sentence: string
}

/** The cures of an attempt as plots: what the rule judges first; post-cure beside other cure is a plot of its own, which the rule does not judge. */
export function curePlotsOf(attempt: AttemptState): CurePlot[] {
  const cures = attempt.records.flatMap((one) =>
    one.record.type === 'cure' && one.overruledBy === null ? [{ fact: one.fact, record: one.record }] : [],
  )
  if (cures.length === 0) return []
  const post = cures.filter(({ record }) => record.postCure === 'yes')
  const main = cures.filter(({ record }) => record.postCure !== 'yes')
  const rule = attempt.criteria
    .map((one) => one.criterion.rule)
    .find((one) => one.kind === 'cure-hold' || one.kind === 'cure-equivalent')
  const plotOf = (some: typeof cures, title: string, judging: CureRule | null): CurePlot[] =>
    some.length === 0
      ? []
      : [
          plotFrom(
            some.map(
              ({ fact, record }): JudgedRecord => ({
                fact: fact.id,
                record,
                point: attempt.point,
                attempt: attempt.attempt,
                observedAt: fact.observedAt,
                observedBy: fact.observedBy,
              }),
            ),
            some.map(({ record }) => record),
            title,
            judging,
          ),
        ]
  return main.length === 0
    ? plotOf(post, 'Post-cure', rule ?? null)
    : [...plotOf(main, 'Cure', rule ?? null), ...plotOf(post, 'Post-cure, beside the cure that the rule judges', null)]
}

function plotFrom(
  judged: JudgedRecord[],
  records: readonly RecordOf<'cure'>[],
  title: string,
  rule: CureRule | null,
): CurePlot {
  const positions = curePositions({ context: { records: judged } })
  const offset = offsetOf(records[0]?.endedAt ?? records[0]?.startedAt ?? 'Z')
  const read = positions.map((position) => probeOf(position, rule))
  const coldest = coldestProbe(read, rule)
  const probes = read.map((one): CureProbe => ({ ...one, isColdest: one === coldest }))
  const metAtMs =
    probes.length > 0 && probes.every((one) => one.metAtMs !== null)
      ? Math.max(...probes.map((one) => one.metAtMs ?? 0))
      : null
  const plot = {
    title,
    offset,
    probes,
    ambient: records.flatMap(ambientOf),
    rule,
    breaks: probes.flatMap((probe) => breaksOf(probe, rule)),
    metAtMs,
  }
  const isSaidInterrupted = records.some((one) => one.interrupted === 'yes')
  return { ...plot, sentence: sentenceOf(plot, isSaidInterrupted) }
}

function probeOf(position: CurePosition, rule: CureRule | null): CureProbe {
  const base = { ...position, lowest: coldestOf(position), isColdest: false }
  if (rule?.kind === 'cure-hold') {
    const least = fractionOf(rule.atLeastTemp)
    const needMs = toNumber(rule.hours) * 3_600_000
    const met = position.stretches
      .flatMap((points) => holdsOf(points, least))
      .find(({ fromMs, toMs }) => isAtLeast(toMs - fromMs, needMs))
    const reached = `longest unbroken ${hours(longestHoldMs(position, least))} h at or above ${showDecimal(rule.atLeastTemp)} °C`
    return { ...base, metAtMs: met ? met.fromMs + needMs : null, reached, curve: null }
  }
  if (rule?.kind === 'cure-equivalent') {
    const curve = cureCurve(rowsOf(rule.table), position.stretches)
    return curve.ok
      ? {
          ...base,
          metAtMs: curve.doneAtMs,
          reached: `equivalent cure ${(Math.floor(curve.total * 1000 + 1e-6) / 1000).toFixed(3)} of 1`,
          curve,
        }
      : { ...base, metAtMs: null, reached: `not computed: ${curve.refused.replaceAll('_', ' ')}`, curve: null }
  }
  return { ...base, metAtMs: null, reached: '', curve: null }
}

/** The probe that governs: the least equivalent cure where that is the rule, otherwise the lowest temperature. */
function coldestProbe(probes: readonly CureProbe[], rule: CureRule | null): CureProbe | undefined {
  if (rule?.kind === 'cure-equivalent' && probes.every((one) => one.curve !== null))
    return [...probes].sort((a, b) => (a.curve?.total ?? 0) - (b.curve?.total ?? 0))[0]
  return probes.reduce<CureProbe | undefined>(
    (cold, one) =>
      one.lowest && (!cold?.lowest || compareFractions(one.lowest.temp, cold.lowest.temp) < 0) ? one : cold,
    undefined,
  )
}

function breaksOf(probe: CureProbe, rule: CureRule | null): CurePlot['breaks'] {
  const gaps = probe.stretches.slice(1).flatMap((points, index) => {
    const [end, start] = [probe.stretches[index]?.at(-1), points[0]]
    return end && start ? [{ fromMs: end.atMs, toMs: start.atMs, why: `nothing logged at ${probe.clock} o’clock` }] : []
  })
  if (rule?.kind !== 'cure-hold') return gaps
  const least: Decimal = rule.atLeastTemp
  const dips = probe.stretches.flatMap((points) => {
    const holds = holdsOf(points, fractionOf(least))
    return holds.slice(1).map((hold, index) => ({
      fromMs: holds[index]?.toMs ?? hold.fromMs,
      toMs: hold.fromMs,
      why: `below ${showDecimal(least)} °C at ${probe.clock} o’clock`,
    }))
  })
  return [...gaps, ...dips]
}

function ambientOf(record: RecordOf<'cure'>): CurePoint[] {
  return (record.ambient ?? []).flatMap((one) => {
    const temp = celsiusOf(one.reading)
    return temp ? [{ atMs: instantOf(one.at), temp, shown: showReadingUnit(one.reading), fact: null }] : []
  })
}

function sentenceOf(plot: Omit<CurePlot, 'sentence'>, isSaidInterrupted: boolean): string {
  const cold = plot.probes.find((one) => one.isColdest)
  const parts = cold?.lowest ? [`Coldest probe ${cold.clock} o’clock, lowest ${cold.lowest.shown}.`] : []
  if (plot.rule) {
    const what =
      plot.rule.kind === 'cure-hold'
        ? `${showDecimal(plot.rule.hours)} h unbroken at or above ${showDecimal(plot.rule.atLeastTemp)} °C`
        : 'Equivalent cure of 1'
    parts.push(
      plot.metAtMs === null
        ? `${what}: not reached at every probe${cold ? `; ${cold.clock} o’clock ${cold.reached}` : ''}.`
        : `${what}: reached at every logged probe ${clockAt(plot.metAtMs, plot.offset, true)} ${plot.offset}.`,
    )
  }
  for (const one of plot.breaks)
    parts.push(
      `Interrupted ${clockAt(one.fromMs, plot.offset, true)} to ${clockAt(one.toMs, plot.offset, true)}: ${one.why}.`,
    )
  if (isSaidInterrupted) parts.push('Recorded as interrupted.')
  return parts.join(' ')
}

function hours(ms: number): string {
  const value = ms / 3_600_000
  return Number.isInteger(value) ? String(value) : value.toFixed(2)
}

function offsetOf(moment: string): string {
  return moment.endsWith('Z') ? 'Z' : moment.slice(-6)
}
