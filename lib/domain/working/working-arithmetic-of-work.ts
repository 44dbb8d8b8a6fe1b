import { compareFractions, fractionOf, plusFraction, showDecimal, timesFraction, toNumber } from '../decimal'
import { measuredExact } from '../judge/exact-units'
import { showExact } from '../judge/show-exact'
import { rowsOf, workingMinutes } from '../judge/time-at-temperature'
import type { CriterionResult } from '../judge/verdict'
import { celsiusOf } from '../judge/yield-surface'
import { curePlotsOf } from '../pictures/cure-plot'
import { type Measured, showReadingUnit } from '../reading'
import type { RecordOf } from '../records/record'
import type { TimeTable } from '../specification'
import { designThen } from './design-then'
import { pressureArithmetic } from './pressure-arithmetic'
import { ofType, ownRecords, type WorkingGround } from './working'

/** The arithmetic that rules on work leave to be put in: interpolation in a table, plug, band, tape, plies, cure and pressure. */
export function workArithmetic({ criterion: { rule } }: CriterionResult, ground: WorkingGround): string[] {
  const own = ownRecords(ground.attempt)
  const design = designThen(ground.state, ground.attempt)?.record ?? null
  switch (rule.kind) {
    case 'working-time': {
      const temps = [
        ...[...ofType(own, 'filler-mix'), ...ofType(own, 'resin-mix')].map(({ record }) => record.resinTemp),
        ...ofType(own, 'tape-roll').map(({ record }) => record.surface),
      ]
      return tableLines(rule.table, temps)
    }
    case 'hardening-time':
      return tableLines(
        rule.table,
        ofType(own, 'arrest').map(({ record: { arrest } }) =>
          arrest?.method === 'plug, plate and band' ? arrest.ambient : undefined,
        ),
      )
    case 'plug-amount': {
      const { defect } = ground.state
      const [axial, hoop, wall] = [defect?.holeAxial, defect?.holeHoop, defect?.nominalWall].map((one) =>
        measuredExact(one, 'mm'),
      )
      if (!axial || !hoop || !wall) return ['needed amount not computed: the defect record is missing']
      const needed = (Math.PI / 4) * toNumber(axial) * toNumber(hoop) * toNumber(wall) * toNumber(rule.timesHoleVolume)
      return [
        `needed = π/4 × ${showExact(axial)} × ${showExact(hoop)} × ${showExact(wall)} × ${showDecimal(rule.timesHoleVolume)} = ${needed.toFixed(1)} mm³`,
      ]
    }
    case 'band-length':
      return bandLines(own)
    case 'tape-start': {
      const total = measuredExact(design?.totalLength, 'mm')
      return total
        ? [
            `least = ${showDecimal(rule.shareOfTotalLength)} × ${showExact(total)} = ${showExact(timesFraction(fractionOf(rule.shareOfTotalLength), total))} mm`,
          ]
        : ['least start not computed: no design sheet']
    }
    case 'plies':
      return ofType(own, 'tape-wrap').flatMap(({ record }) => {
        const width = measuredExact(record.tapeWidth, 'mm')
        const pitches = (record.pitches ?? []).flatMap((one) => measuredExact(one, 'mm') ?? []).map(toNumber)
        if (!width || pitches.length === 0 || record.passes === undefined) return []
        const widest = Math.max(...pitches)
        const thinnest = Math.floor(toNumber(width) / widest + 1e-9)
        return [
          `${record.passes} passes × floor(${showExact(width)} / ${widest}) = ${record.passes} × ${thinnest} = ${record.passes * thinnest} plies at the thinnest place`,
        ]
      })
    case 'cure-hold':
    case 'cure-equivalent':
      return curePlotsOf(ground.attempt).map((plot) => plot.sentence)
    case 'pressure-drop':
      return ofType(own, 'pressure-test').flatMap(({ record }) => pressureArithmetic(rule, record, design))
    case 'design-envelope':
      return envelopeLines(ground, design)
    default:
      return []
  }
}

/** As found against each bound of the design sheet's envelope. */
function envelopeLines({ state: { defect } }: WorkingGround, design: RecordOf<'design'> | null): string[] {
  const envelope = design?.envelope
  if (!defect || !envelope) return ['not compared: the defect record or the envelope of the design sheet is missing']
  return [
    boundLine('hole axial', defect.holeAxial, 'max', envelope.holeAxialMax),
    boundLine('hole hoop', defect.holeHoop, 'max', envelope.holeHoopMax),
    ...defect.diameters.flatMap((one, at) => [
      boundLine(`D${at + 1}`, one, 'min', envelope.diameterMin),
      boundLine(`D${at + 1}`, one, 'max', envelope.diameterMax),
    ]),
    `wall at the outermost stations: each at least ${showReadingUnit(envelope.minWallAtBandEdge)}`,
  ]
}

/** A value beside its bound, with the sign that holds. */
function boundLine(label: string, value: Measured, side: 'min' | 'max', bound: Measured): string {
  const [found, limit] = [measuredExact(value, 'mm'), measuredExact(bound, 'mm')]
  if (!found || !limit) return `${label}: not compared, the units differ`
  const order = compareFractions(found, limit)
  const sign = side === 'min' ? (order >= 0 ? '≥' : '<') : order <= 0 ? '≤' : '>'
  return `${label}: ${showReadingUnit(value)} ${sign} ${showReadingUnit(bound)}`
}

const KELVIN = 273.15

/** Where a table is interpolated: between which rows, u, and the time that comes out. */
function tableLines(table: TimeTable, temps: readonly (Measured | undefined)[]): string[] {
  if (table.kind === 'step') return []
  const rows = rowsOf(table).toSorted((a, b) => a[0] - b[0])
  const shown = temps.flatMap((temp) => {
    const exact = celsiusOf(temp)
    if (!exact) return []
    const t = toNumber(exact)
    const answer = workingMinutes(table, t)
    const warmer = rows.findIndex(([row]) => row >= t)
    const [from, to] = [rows[warmer - 1], rows[warmer]]
    if (!answer.ok || !to) return [`${t} °C: no time in the table`]
    if (!from || to[0] === t) return [`${t} °C is a row of the table: ${answer.minutes} min`]
    const inverse = (at: number): number => 1 / (at + KELVIN)
    const u = (inverse(t) - inverse(from[0])) / (inverse(to[0]) - inverse(from[0]))
    return [
      `between ${from[0]} °C ${from[1]} min and ${to[0]} °C ${to[1]} min: u = ${u.toFixed(4)}; τ(${t} °C) = ${from[1]} × (${to[1]}/${from[1]})^${u.toFixed(4)} = ${answer.minutes.toFixed(2)} min`,
    ]
  })
  return [...new Set(shown)]
}

function bandLines(own: ReturnType<typeof ownRecords>): string[] {
  return ofType(own, 'arrest').flatMap(({ record: { arrest } }) => {
    if (arrest?.method !== 'plug, plate and band') return []
    const girths = arrest.girths.flatMap((one) => measuredExact(one, 'mm') ?? [])
    const [build, thickness, tail] = [arrest.bandBuild, arrest.bandThickness, arrest.bandTail].map((one) =>
      measuredExact(one, 'mm'),
    )
    if (girths.length === 0 || !build || !thickness || !tail)
      return ['needed length not computed: a measure is missing']
    const sum = girths.reduce(plusFraction)
    const mean = { numerator: sum.numerator, denominator: sum.denominator * BigInt(girths.length) }
    const needed = toNumber(mean) + 2 * Math.PI * (toNumber(build) + toNumber(thickness) / 2) + toNumber(tail)
    return [
      `mean girth = (${girths.map((one) => showExact(one, 1)).join(' + ')}) / ${girths.length} = ${showExact(mean, 1)} mm`,
      `needed = ${showExact(mean, 1)} + 2π (${showExact(build)} + ${showExact(thickness)} / 2) + ${showExact(tail)} = ${needed.toFixed(1)} mm`,
    ]
  })
}
