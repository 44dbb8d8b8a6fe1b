import { compareFractions, type Fraction, fractionOf, plusFraction } from '../decimal'
import { showUnit } from '../reading'
import type { Rule } from '../specification'
import { correctedQuestions } from './corrected-questions'
import { type Bounds, boundsOf, type ExactLimit } from './exact-limit'
import { convertExact, minusFraction } from './exact-units'
import { type JudgeFrame, plannedCount, readingsOf, type Taken } from './frame'
import { guardOf, isTaken } from './judge-reading'
import { tapChecks } from './judge-taps'
import { type Check, findingOf, notProven, outcomeOf, type RuleOutcome } from './outcome'
import { meanPlaces } from './quantity-names'
import { showBeside } from './show-exact'

type MeanRule = Extract<Rule, { kind: 'mean' }>

/**
 * The exact mean within the bounds. Not proven until as many numbers as planned are there; `< x`, `> x` and through-wall are never averaged, and a mean over a
 * list that holds one is not proven.
 */
export function judgeMean(rule: MeanRule, frame: JudgeFrame): RuleOutcome {
  const readings = readingsOf(frame, rule.quantity)
  const judge = (list: Taken[]) => judgeList(rule, frame, list)
  return { ...judge(readings), questions: correctedQuestions(frame, readings, judge) }
}

function judgeList(rule: MeanRule, frame: JudgeFrame, readings: Taken[]): RuleOutcome {
  const bounds = boundsOf(rule, frame.context)
  const limit = bounds.min ?? bounds.max
  const planned = plannedCount(frame, rule.quantity)
  const taken = readings.filter(isTaken)
  if (bounds.isDesignMissing)
    return notProven(frame, 'design-missing', `${taken.length} readings`, { limit: bounds.text })
  if (!limit) return notProven(frame, 'no-limit', `${taken.length} readings`)
  const odd = taken.filter((one) => one.reading.kind !== 'number')
  const values = taken.flatMap((one) =>
    one.reading.kind === 'number'
      ? [{ one, value: convertExact(fractionOf(one.reading), one.reading.unit, limit.unit) }]
      : [],
  )
  const numbers = values.flatMap(({ value }) => (value ? [value] : []))
  const checks: Check[] = [
    ...odd.map(
      (one): Check => ({
        verdict: 'not proven',
        finding: findingOf(frame, 'no-number', { mark: one.mark, facts: [one.fact] }),
      }),
    ),
    ...values
      .filter(({ value }) => !value)
      .map(
        ({ one }): Check => ({
          verdict: 'not proven',
          finding: findingOf(frame, 'unit-differs', { mark: one.mark, limit: bounds.text, facts: [one.fact] }),
        }),
      ),
  ]
  if (planned !== null && numbers.length > 0 && numbers.length < planned)
    checks.push({
      verdict: 'not proven',
      finding: findingOf(frame, 'too-few-readings', { found: `${numbers.length}`, limit: `${planned}` }),
    })
  checks.push(...tapChecks(taken, frame))
  const mean = exactMean(numbers)
  const counts = { count: taken.length, ...(planned === null ? {} : { planned }) }
  if (!mean)
    return outcomeOf(
      [...checks, { verdict: 'not proven', finding: findingOf(frame, 'no-readings', { limit: bounds.text }) }],
      'no readings',
      { figures: counts },
    )
  const shown = showMean(rule.quantity, mean, taken, bounds)
  if (checks.length === 0) checks.push(...judgeValue(mean, taken, bounds, frame, `${shown} ${showUnit(limit.unit)}`))
  return outcomeOf(checks, `mean ${shown} ${showUnit(limit.unit)} of ${numbers.length}`, {
    figures: { ...counts, mean: shown },
  })
}

function exactMean(values: readonly Fraction[]): Fraction | null {
  if (values.length === 0) return null
  const sum = values.reduce(plusFraction)
  return { numerator: sum.numerator, denominator: sum.denominator * BigInt(values.length) }
}

function showMean(quantity: string, mean: Fraction, taken: readonly Taken[], bounds: Bounds): string {
  const scales = taken.map(({ reading }) => ('scale' in reading ? reading.scale : 0))
  return showBeside(
    mean,
    meanPlaces(quantity, Math.max(0, ...scales)),
    [bounds.min, bounds.max].flatMap((limit) => (limit ? [limit.value] : [])),
  )
}

function judgeValue(
  mean: Fraction,
  taken: readonly Taken[],
  bounds: Bounds,
  frame: JudgeFrame,
  found: string,
): Check[] {
  const side = (limit: ExactLimit | null, sign: '≥' | '≤'): Check[] => {
    if (!limit) return []
    const guards = taken.map((one) => guardOf(one, limit, frame))
    const text = `${sign} ${limit.text}`
    if (guards.some((guard) => guard === null))
      return [{ verdict: 'not proven', finding: findingOf(frame, 'uncertainty-missing', { found, limit: text }) }]
    const guard = guards.reduce(
      (most, one) => (one && (!most || compareFractions(one, most) > 0) ? one : most),
      null,
    ) ?? { numerator: 0n, denominator: 1n }
    const inside = sign === '≥' ? minusFraction(mean, limit.value) : minusFraction(limit.value, mean)
    if (compareFractions(inside, guard) >= 0) return [{ verdict: 'pass' }]
    const isOutside = compareFractions(plusFraction(inside, guard), { numerator: 0n, denominator: 1n }) < 0
    const code = isOutside ? (sign === '≥' ? 'mean-below-limit' : 'mean-above-limit') : 'inside-guard-band'
    return [
      {
        verdict: isOutside ? 'fail' : 'not proven',
        finding: findingOf(frame, code, { found, limit: text, facts: taken.map((one) => one.fact) }),
      },
    ]
  }
  return [...side(bounds.min, '≥'), ...side(bounds.max, '≤')]
}
