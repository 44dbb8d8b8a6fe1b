import { compareFractions, type Decimal, type Fraction, fractionOf, plusFraction, showFraction } from '../decimal'
import type { Measured } from '../reading'
import type { Rule } from '../specification'
import { instrumentQuestions } from './corrected-questions'
import { measuredExact, minusFraction } from './exact-units'
import type { JudgeFrame } from './frame'
import { type Mix, mixesOf } from './mixes'
import { type Check, findingOf, notProven, outcomeOf, type RuleOutcome } from './outcome'
import { showBeside } from './show-exact'
import { showLimit } from './show-limit'

type RatioRule = Extract<Rule, { kind: 'ratio' }>
type RatioCheck = Check & { found: string; working?: string }

/** Part B for 100 of part A by mass in each mix, exactly. A whole kit is not weighed and says so; by volume is another number and proves nothing here. */
export function judgeRatio(rule: RatioRule, frame: JudgeFrame): RuleOutcome {
  const mixes = mixesOf(frame, ['filler-mix', 'resin-mix'])
  if (mixes.length === 0) return notProven(frame, 'no-readings', 'no mix')
  const checks = mixes.map((mix) => checkMix(rule, mix, frame))
  const working = checks.flatMap((check) => (check.working ? [check.working] : []))
  return outcomeOf(checks, checks.map((check) => check.found).join(', '), {
    figures: { count: mixes.length },
    working,
    questions: instrumentQuestions(
      frame,
      mixes.flatMap(({ record }) =>
        record.scale && record.startedAt ? [{ of: record.scale, at: record.startedAt }] : [],
      ),
    ),
  })
}

function checkMix(rule: RatioRule, mix: Mix, frame: JudgeFrame): RatioCheck {
  const { record, mark, fact } = mix
  const limit = showLimit(frame.criterion, frame.context)
  if (record.proportion === 'whole kit') return { verdict: 'pass', found: 'whole kit, no weighing' }
  if (record.proportion === 'by volume')
    return {
      verdict: 'not proven',
      found: 'by volume',
      finding: findingOf(frame, 'by-volume', { mark, limit, facts: [fact] }),
    }
  const a = sumOf(record.partA)
  const b = sumOf(record.partB)
  if (!a || !b || a.numerator === 0n)
    return {
      verdict: 'not proven',
      found: 'not weighed',
      finding: findingOf(frame, 'mass-missing', { mark, limit, facts: [fact] }),
    }
  const ratio: Fraction = { numerator: b.numerator * a.denominator * 100n, denominator: b.denominator * a.numerator }
  const [low, high] = limitsOf(rule)
  const shown = showBeside(ratio, 1, [low, high])
  const working = `${mark}: ${showFraction(b, 0)} / ${showFraction(a, 0)} × 100 = ${shown}`
  if (compareFractions(ratio, low) >= 0 && compareFractions(ratio, high) <= 0)
    return { verdict: 'pass', found: shown, working }
  return {
    verdict: 'fail',
    found: shown,
    working,
    finding: findingOf(frame, 'ratio-outside', { mark, found: shown, limit, facts: [fact] }),
  }
}

function limitsOf({ partBPer100, tolerance }: { partBPer100: Decimal; tolerance: Decimal }): [Fraction, Fraction] {
  const middle = fractionOf(partBPer100)
  const width = fractionOf(tolerance)
  return [minusFraction(middle, width), plusFraction(middle, width)]
}

/** Mass of a part in g, exactly; null unless every batch of it was weighed. */
function sumOf(parts: readonly { amount?: Measured | undefined }[] | undefined): Fraction | null {
  if (!parts?.length) return null
  return parts.reduce<Fraction | null>(
    (sum, part) => {
      const grams = measuredExact(part.amount, 'g')
      return sum && grams ? plusFraction(sum, grams) : null
    },
    { numerator: 0n, denominator: 1n },
  )
}
