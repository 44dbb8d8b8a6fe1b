import { showDecimal, toNumber } from '../decimal'
import type { AttemptState, RepairState } from '../fold/repair-state'
import { correctedHold } from '../judge/corrected-hold'
import { type ExactLimit, exactLimit } from '../judge/exact-limit'
import { measuredExact } from '../judge/exact-units'
import { showReadingUnit } from '../reading'
import type { RecordOf } from '../records/record'
import type { Rule } from '../specification'
import { instantOf } from '../time'
import { designThen } from '../working/design-then'

type DropRule = Extract<Rule, { kind: 'pressure-drop' }>
type TestReading = RecordOf<'pressure-test'>['readings'][number]

export type PressurePoint = {
  at: string
  atMs: number
  mpa: number
  shown: string
  /** What the gauge would show had the steel kept the temperature of the first reading; null where it cannot be computed. */
  correctedMpa: number | null
  second: { mpa: number; shown: string } | null
  steel: string | null
}

/** A pressure test as it is plotted: readings, corrected readings, and the lines of the specification. */
export type PressurePlot = {
  offset: string
  kind: string
  gauges: readonly string[]
  points: PressurePoint[]
  /** Lowest corrected pressure that the allowed drop leaves; null without that rule. */
  allowed: { mpa: number; text: string } | null
  least: ExactLimit | null
  sentence: string
}

/** The pressure tests of an attempt with at least two readings. */
export function pressurePlotsOf(state: RepairState, attempt: AttemptState): PressurePlot[] {
  const rules = attempt.criteria.map((one) => one.criterion.rule)
  const drop = rules.find((one): one is DropRule => one.kind === 'pressure-drop') ?? null
  const each = rules.find((one) => one.kind === 'each' && one.quantity === 'test-pressure')
  const design = designThen(state, attempt)?.record ?? null
  const least = each?.kind === 'each' && each.min ? exactLimit(each.min, { design, defect: state.defect }) : null
  return attempt.records.flatMap(({ record, overruledBy }) => {
    if (record.type !== 'pressure-test' || overruledBy !== null) return []
    const [first] = record.readings
    if (!first || record.readings.length < 2) return []
    const points = record.readings.flatMap((one) => pointOf(one, first, drop, design))
    const start = points[0]
    const allowed =
      drop && start
        ? {
            mpa: start.mpa - toNumber(drop.maxDrop),
            text: `start less allowed ${showDecimal(drop.maxDrop)} MPa, corrected`,
          }
        : null
    return [
      {
        offset: first.at.endsWith('Z') ? 'Z' : first.at.slice(-6),
        kind: record.kind,
        gauges: record.gauges.map((one) => one.slice('instrument:'.length)),
        points,
        allowed,
        least,
        sentence: sentenceOf(record.kind, points, drop),
      },
    ]
  })
}

function pointOf(
  one: TestReading,
  first: TestReading,
  drop: DropRule | null,
  design: RecordOf<'design'> | null,
): PressurePoint[] {
  const exact = measuredExact(one.pressure, 'MPa')
  if (!exact) return []
  const second = measuredExact(one.secondPressure, 'MPa')
  return [
    {
      at: one.at,
      atMs: instantOf(one.at),
      mpa: toNumber(exact),
      shown: showReadingUnit(one.pressure),
      correctedMpa: drop ? correctedMpa(one, first, drop, design) : null,
      second:
        second && one.secondPressure ? { mpa: toNumber(second), shown: showReadingUnit(one.secondPressure) } : null,
      steel: one.steel ? showReadingUnit(one.steel) : null,
    },
  ]
}

function correctedMpa(
  one: TestReading,
  first: TestReading,
  { correction }: DropRule,
  design: RecordOf<'design'> | null,
): number | null {
  const hold = correctedHold(correction, first, one, design)
  if ('code' in hold) return null
  return hold.corrected ? toNumber(hold.p0) - hold.corrected.dropMpa : toNumber(hold.p1)
}

function sentenceOf(kind: string, points: readonly PressurePoint[], drop: DropRule | null): string {
  const [first, last] = [points[0], points.at(-1)]
  if (!first || !last) return kind
  const minutes = Math.round((last.atMs - first.atMs) / 60_000)
  const read = `${kind}: ${first.shown} at ${first.at.slice(11, 16)} to ${last.shown} at ${last.at.slice(11, 16)}, ${minutes} min.`
  if (!drop) return `${read} The specification has no allowed drop.`
  if (last.correctedMpa === null)
    return `${read} The correction for steel temperature cannot be computed: a temperature or a value of the design sheet is missing.`
  const isPlain = points.every((one) => one.correctedMpa === null || Math.abs(one.correctedMpa - one.mpa) < 1e-12)
  return `${read} ${isPlain ? 'Steel at the same temperature at the first and the last reading, so nothing is corrected' : `Corrected for steel temperature the last reading is ${last.correctedMpa.toFixed(4)} MPa`}; allowed drop ${showDecimal(drop.maxDrop)} MPa.`
}
