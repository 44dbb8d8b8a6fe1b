import { dewPoint } from '@/lib/calc/dew-point'
import { isRefused } from '@/lib/calc/refusal'
import {
  compareFractions,
  type Fraction,
  fractionOf,
  plusFraction,
  showDecimal,
  showFraction,
  toNumber,
} from '../decimal'
import { type Bounds, boundsOf } from '../judge/exact-limit'
import { convertExact, minusFraction } from '../judge/exact-units'
import { computedPlaces, meanPlaces } from '../judge/quantity-names'
import { showExact } from '../judge/show-exact'
import type { CriterionResult } from '../judge/verdict'
import { celsiusOf } from '../judge/yield-surface'
import { showReading, showUnit } from '../reading'
import { designThen } from './design-then'
import { profileLines, saltLines } from './surface-lines'
import { type OwnRecord, ofType, ownRecords, type WorkingGround } from './working'
import { workArithmetic } from './working-arithmetic-of-work'

/** The arithmetic of a criterion with its numbers put in: derived here from the readings, after what the rule itself told. */
export function workingArithmetic(result: CriterionResult, ground: WorkingGround): string[] {
  const { rule } = result.criterion
  const own = ownRecords(ground.attempt)
  const basis = { design: designThen(ground.state, ground.attempt)?.record ?? null, defect: ground.state.defect }
  switch (rule.kind) {
    case 'each':
      return [...computedLines(own, rule.quantity), ...eachLines(own, rule.quantity, boundsOf(rule, basis))]
    case 'mean':
      return meanLines(own, rule.quantity, boundsOf(rule, basis))
    case 'count':
      return [`${result.figures.count ?? 0} taken, ${rule.atLeast} demanded`]
    default:
      return [...result.working, ...workArithmetic(result, ground)]
  }
}

/** How computed readings came about: dew point and margin, overlap, filler heights. */
function computedLines(own: readonly OwnRecord[], quantity: string): string[] {
  if (quantity === 'dew-margin' || quantity === 'dew-point')
    return ofType(own, 'climate').flatMap(({ record }) => dewLines(record))
  if (quantity === 'salts') return saltLines(own)
  if (quantity === 'profile') return profileLines(own)
  if (quantity === 'tape-overlap')
    return ofType(own, 'tape-wrap').flatMap(({ record }) =>
      (record.pitches ?? []).flatMap((pitch, at) => {
        const step = record.tapeWidth && convertExact(fractionOf(pitch), pitch.unit, record.tapeWidth.unit)
        return record.tapeWidth && step
          ? [
              `P${at + 1}: (1 − ${showExact(step)} / ${showDecimal(record.tapeWidth)}) × 100 = ${((1 - toNumber(step) / toNumber(record.tapeWidth)) * 100).toFixed(1)} %`,
            ]
          : []
      }),
    )
  if (quantity === 'filler-over-hole' || quantity === 'filler-on-ring')
    return ofType(own, 'filler-thickness').flatMap(({ record }) =>
      (record.after ?? []).flatMap((after) => {
        const before = record.before?.find((one) => one.mark === after.mark)?.reading
        if ((after.mark === record.holeMark) !== (quantity === 'filler-over-hole')) return []
        return after.reading.kind === 'number' && before?.kind === 'number'
          ? [
              `${after.mark}: ${showDecimal(after.reading)} − ${bracketed(showDecimal(before))} = ${showExact(minusFraction(fractionOf(after.reading), fractionOf(before)), Math.max(after.reading.scale, before.scale))} ${showUnit(after.reading.unit)}`,
            ]
          : [`${after.mark}: not both heights are numbers`]
      }),
    )
  return []
}

function dewLines(record: ReturnType<typeof ofType<'climate'>>[number]['record']): string[] {
  const air = celsiusOf(record.air)
  if (!air || record.humidity?.kind !== 'number') return ['dew point not computed: air or humidity is missing']
  const [t, u] = [toNumber(air), toNumber(record.humidity)]
  const answer = dewPoint({ dryC: t, rhPct: u })
  if (isRefused(answer)) return [`dew point not computed: ${answer.refused.replaceAll('_', ' ')}`]
  const x = Math.log(u / 100) + (17.62 * t) / (243.12 + t)
  const at = record.takenAt ? `${record.takenAt.slice(11, 16)}: ` : ''
  const shownT = Number(t.toFixed(3)).toString()
  return [
    `${at}x = ln(${u}/100) + 17.62 × ${shownT} / (243.12 + ${shownT}) = ${x.toFixed(4)}; Td = 243.12 × ${x.toFixed(4)} / (17.62 − ${bracketed(x.toFixed(4))}) = ${answer.dewPointC.toFixed(2)} °C`,
    ...(record.steel ?? []).flatMap((one) => {
      const steel = celsiusOf(one.reading)
      return steel
        ? [
            `${at}margin at ${one.clock} o’clock: ${Number(toNumber(steel).toFixed(3))} − ${bracketed(answer.dewPointC.toFixed(2))} = ${(toNumber(steel) - answer.dewPointC).toFixed(2)} K`,
          ]
        : []
    }),
  ]
}

/** The distance of the worst reading from each limit. */
function eachLines(own: readonly OwnRecord[], quantity: string, bounds: Bounds): string[] {
  const readings = own.flatMap((one) => one.yields.readings.filter((each) => each.quantity === quantity))
  const numbers = readings.flatMap((one) =>
    one.reading.kind === 'number' ? [{ mark: one.mark, reading: one.reading }] : [],
  )
  const lineOf = (side: 'min' | 'max'): string[] => {
    const limit = bounds[side]
    if (!limit) return []
    const valued = numbers.flatMap((one) => {
      const value = convertExact(fractionOf(one.reading), one.reading.unit, limit.unit)
      return value ? [{ ...one, value }] : []
    })
    const worst = valued.reduce<(typeof valued)[number] | null>((end, one) => {
      const order = end ? compareFractions(one.value, end.value) : -1
      return end && (side === 'min' ? order >= 0 : order <= 0) ? end : one
    }, null)
    if (!worst) return []
    const places = computedPlaces(quantity) ?? worst.reading.scale
    const shown = computedPlaces(quantity) === null ? showExact(worst.value, places) : showFraction(worst.value, 2)
    const distance = side === 'min' ? minusFraction(worst.value, limit.value) : minusFraction(limit.value, worst.value)
    const gap = computedPlaces(quantity) === null ? showExact(distance, places) : showFraction(distance, 2)
    const limitText = limit.text.replace(` ${showUnit(limit.unit)}`, '')
    return [
      side === 'min'
        ? `lowest ${shown} at ${worst.mark}: ${shown} − ${bracketed(limitText)} = ${gap} ${showUnit(limit.unit)}, ${signed(distance)}`
        : `highest ${shown} at ${worst.mark}: ${limitText} − ${bracketed(shown)} = ${gap} ${showUnit(limit.unit)}, ${signed(distance)}`,
    ]
  }
  return [...limitLines(bounds), ...lineOf('min'), ...lineOf('max'), ...oddLine(readings)]
}

function limitLines(bounds: Bounds): string[] {
  return [bounds.min, bounds.max].flatMap((limit) => (limit?.origin ? [`limit: ${limit.origin} = ${limit.text}`] : []))
}

function oddLine(
  readings: readonly { mark: string; reading: OwnRecord['yields']['readings'][number]['reading'] }[],
): string[] {
  const odd = readings.filter((one) => one.reading.kind !== 'number')
  return odd.length > 0 ? [`no number: ${odd.map((one) => `${one.mark} ${showReading(one.reading)}`).join(', ')}`] : []
}

function signed(distance: Fraction): string {
  return distance.numerator < 0n ? 'outside' : 'inside'
}

const MOST_TERMS = 30

function meanLines(own: readonly OwnRecord[], quantity: string, bounds: Bounds): string[] {
  const limit = bounds.min ?? bounds.max
  const readings = own.flatMap((one) => one.yields.readings.filter((each) => each.quantity === quantity))
  const terms = readings.flatMap(({ reading }) => {
    const value =
      reading.kind === 'number' && limit ? convertExact(fractionOf(reading), reading.unit, limit.unit) : null
    return value && reading.kind === 'number' ? [{ value, scale: reading.scale }] : []
  })
  if (terms.length === 0) return [...limitLines(bounds), 'no numbers to take a mean of']
  const sum = terms.map((one) => one.value).reduce(plusFraction)
  const mean = { numerator: sum.numerator, denominator: sum.denominator * BigInt(terms.length) }
  const scale = Math.max(...terms.map((one) => one.scale))
  const listed =
    terms.length <= MOST_TERMS
      ? `${terms.map((one) => showExact(one.value, one.scale)).join(' + ')} = `
      : 'sum of all = '
  return [
    ...limitLines(bounds),
    `${listed}${showExact(sum, scale)}`,
    `${showExact(sum, scale)} / ${terms.length} = ${showFraction(mean, Math.max(meanPlaces(quantity, scale), 2))}`,
    ...oddLine(readings),
  ]
}

function bracketed(text: string): string {
  return text.startsWith('-') ? `(${text})` : text
}
