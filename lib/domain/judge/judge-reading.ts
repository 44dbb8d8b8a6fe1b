import { compareFractions, type Fraction, fractionOf, plusFraction } from '../decimal'
import { dayOf } from '../time'
import { certificateInForce } from './certificate-in-force'
import type { Bounds, ExactLimit } from './exact-limit'
import { convertDifference, convertExact, minusFraction } from './exact-units'
import type { JudgeFrame, Taken } from './frame'
import type { VerdictKind } from './verdict'

/** How one reading stands to its bounds. `code` says why it did not pass; `distance` orders readings from worst to best (null: no number). */
export type ReadingVerdict = { verdict: VerdictKind; code?: string; against?: ExactLimit; distance: Fraction | null }

const NONE: Fraction = { numerator: 0n, denominator: 1n }

/** True for a reading that counts as taken: a number, a bound of the instrument's range, or through-wall. */
export function isTaken({ reading }: Taken): boolean {
  return (
    reading.kind === 'number' || reading.kind === 'below' || reading.kind === 'above' || reading.kind === 'through-wall'
  )
}

/**
 * Judge one reading against both bounds by the specification's decision rule. `< x` passes a maximum when x is at or under it, fails a minimum when x is at
 * or under it, and otherwise decides nothing; `> x` is its mirror. Through-wall fails a minimum.
 */
export function judgeReading(taken: Taken, bounds: Bounds, frame: JudgeFrame): ReadingVerdict {
  const { reading } = taken
  if (reading.kind === 'through-wall')
    return bounds.min
      ? { verdict: 'fail', code: 'through-wall', against: bounds.min, distance: null }
      : { verdict: 'not proven', code: 'reading-undecided', distance: null }
  if (!('digits' in reading)) return { verdict: 'not proven', code: 'reading-missing', distance: null }
  const sides = [judgeSide('min', bounds.min, taken, frame), judgeSide('max', bounds.max, taken, frame)].filter(
    (side) => side !== null,
  )
  const distances = sides.flatMap((side) => (side.distance ? [side.distance] : []))
  const distance = distances.reduce<Fraction | null>(
    (least, one) => (least && compareFractions(least, one) <= 0 ? least : one),
    null,
  )
  const worst =
    sides.find((side) => side.verdict === 'fail') ?? sides.find((side) => side.verdict === 'not proven') ?? sides[0]
  if (!worst) return { verdict: 'not proven', code: 'no-limit', distance: null }
  return worst.code === 'inside-guard-band' && isZoneEmpty(taken, bounds, frame)
    ? { ...worst, code: 'acceptance-zone-empty', distance }
    : { ...worst, distance }
}

/** True when twice the uncertainty is wider than the band between both bounds: no reading can pass. */
function isZoneEmpty(taken: Taken, { min, max }: Bounds, frame: JudgeFrame): boolean {
  const guard = min && max ? guardOf(taken, min, frame) : null
  const top = min && max ? convertExact(max.value, max.unit, min.unit) : null
  return (
    guard !== null &&
    top !== null &&
    min !== null &&
    compareFractions(plusFraction(guard, guard), minusFraction(top, min.value)) > 0
  )
}

function judgeSide(
  side: 'min' | 'max',
  limit: ExactLimit | null,
  taken: Taken,
  frame: JudgeFrame,
): ReadingVerdict | null {
  if (!limit || !('digits' in taken.reading)) return null
  const { reading } = taken
  const value = convertExact(fractionOf(reading), reading.unit, limit.unit)
  const answer = (verdict: VerdictKind, code?: string): ReadingVerdict => ({
    verdict,
    ...(code ? { code } : {}),
    against: limit,
    distance: value && (side === 'min' ? minusFraction(value, limit.value) : minusFraction(limit.value, value)),
  })
  if (!value) return answer('not proven', 'unit-differs')
  const guard = guardOf(taken, limit, frame)
  if (!guard) return answer('not proven', 'uncertainty-missing')
  const inside = side === 'min' ? minusFraction(value, limit.value) : minusFraction(limit.value, value)
  const opens =
    reading.kind === 'number' ? null : (reading.kind === 'below') === (side === 'min') ? 'outwards' : 'inwards'
  const code = side === 'min' ? 'reading-below-limit' : 'reading-above-limit'
  if (opens === 'outwards')
    return compareFractions(inside, NONE) <= 0 ? answer('fail', code) : answer('not proven', 'reading-undecided')
  if (compareFractions(inside, guard) >= 0) return answer('pass')
  if (opens === 'inwards') return answer('not proven', 'reading-undecided')
  return compareFractions(plusFraction(inside, guard), NONE) < 0
    ? answer('fail', code)
    : answer('not proven', 'inside-guard-band')
}

/** The width of the guard band: zero by simple acceptance, otherwise the certificate's expanded uncertainty; null when there is none. */
export function guardOf(taken: Taken, limit: ExactLimit, frame: JudgeFrame): Fraction | null {
  if (frame.context.specification.body.decisionRule === 'simple acceptance') return NONE
  const instrument = taken.instrument ? frame.context.instruments[taken.instrument] : undefined
  const spread = instrument ? certificateInForce(instrument, dayOf(taken.at))?.body.expandedUncertainty : undefined
  return spread ? convertDifference(fractionOf(spread), spread.unit, limit.unit) : null
}
