import { type Fraction, fractionOf, showDecimal, timesFraction } from '../decimal'
import { type Measured, showUnit, type Unit } from '../reading'
import type { Limit } from '../specification'
import type { JudgeContext } from './judge-context'
import { showExact } from './show-exact'

/** A limit as an exact value in its unit, with its text and where it came from. */
export type ExactLimit = { value: Fraction; unit: Unit; text: string; origin: string }
export type Bounds = { min: ExactLimit | null; max: ExactLimit | null; isDesignMissing: boolean; text: string }

type DesignBasis = Pick<JudgeContext, 'design' | 'defect'>

/** Values of the design sheet as a person says them. */
export const DESIGN_WORDS: Record<Extract<Limit, { from: 'design' }>['value'], string> = {
  plies: 'plies',
  minThickness: 'minimum thickness',
  overlapEachSide: 'overlap each side',
  taper: 'taper',
  totalLength: 'total length',
  testPressure: 'test pressure',
  designPressure: 'design pressure',
  designDiameter: 'diameter',
  designWall: 'wall',
  designTemp: 'temperature',
  defectLength: 'defect length',
}

/** The exact value of a limit; null when it stands on a design sheet that is not there. */
export function exactLimit(limit: Limit, basis: DesignBasis): ExactLimit | null {
  if (limit.from === 'specification') {
    return {
      value: fractionOf(limit.value),
      unit: limit.unit,
      text: `${showDecimal(limit.value)} ${showUnit(limit.unit)}`,
      origin: '',
    }
  }
  const given: Measured | undefined =
    limit.value === 'defectLength' ? basis.defect?.defectLength : basis.design?.[limit.value]
  if (!given) return null
  const value = limit.factor ? timesFraction(fractionOf(limit.factor), fractionOf(given)) : fractionOf(given)
  const unit = showUnit(given.unit)
  const origin = limit.factor
    ? `${showDecimal(limit.factor)} × ${DESIGN_WORDS[limit.value]} ${showDecimal(given)} ${unit}`
    : `${DESIGN_WORDS[limit.value]} as designed`
  return { value, unit: given.unit, text: `${showExact(value, given.scale)} ${unit}`, origin }
}

/** Both bounds of a rule and their text; `isDesignMissing` when one stands on a design sheet that is not there. */
export function boundsOf(rule: { min?: Limit | undefined; max?: Limit | undefined }, basis: DesignBasis): Bounds {
  const min = rule.min ? exactLimit(rule.min, basis) : null
  const max = rule.max ? exactLimit(rule.max, basis) : null
  const isDesignMissing = (!!rule.min && !min) || (!!rule.max && !max)
  const texts = [showBound('≥', rule.min, min), showBound('≤', rule.max, max)].filter((text) => text !== '')
  return { min, max, isDesignMissing, text: texts.join(' and ') || 'no limit' }
}

function showBound(sign: '≥' | '≤', limit: Limit | undefined, exact: ExactLimit | null): string {
  if (!limit) return ''
  if (exact) return `${sign} ${exact.text}${exact.origin ? ` (${exact.origin})` : ''}`
  return limit.from === 'design' ? `${sign} ${DESIGN_WORDS[limit.value]} as designed (no design sheet)` : ''
}
