import { compareFractions, type Fraction, fractionOf, showDecimal, toNumber } from '../decimal'
import type { FactId } from '../facts/fact'
import { showReadingUnit } from '../reading'
import type { Rule } from '../specification'
import { instantOf, showClock } from '../time'
import { correctedHold } from './corrected-hold'
import { instrumentQuestions } from './corrected-questions'
import { minusFraction } from './exact-units'
import { type JudgeFrame, recordsOfType, usesOf } from './frame'
import { showMinutes } from './judge-window'
import { type Check, findingOf, notProven, outcomeOf, type RuleOutcome } from './outcome'
import { showExact } from './show-exact'
import { compareMinutes } from './window-span'
import type { DraftOf } from './yield-builder'

type DropRule = Extract<Rule, { kind: 'pressure-drop' }>
type Test = { record: DraftOf<'pressure-test'>; fact: FactId | null }

/** The drop over the test, corrected for the steel's temperature by the specification's figures; exact where the temperature did not change. */
export function judgePressureDrop(rule: DropRule, frame: JudgeFrame): RuleOutcome {
  const tests = recordsOfType(frame.context.records, 'pressure-test').map(
    ({ record, judged }): Test => ({ record, fact: judged.fact }),
  )
  if (tests.length === 0) return notProven(frame, 'no-readings', 'no test')
  const judged = tests.map((test) => judgeTest(rule, test, frame))
  const questions = instrumentQuestions(
    frame,
    usesOf(frame, (use) => use.role === 'pressure' || use.role === 'steel'),
  )
  return outcomeOf(
    judged.flatMap((one) => one.checks),
    judged.map((one) => one.found).join('; '),
    { working: judged.flatMap((one) => one.working), questions },
  )
}

function judgeTest(
  rule: DropRule,
  { record, fact }: Test,
  frame: JudgeFrame,
): { checks: Check[]; found: string; working: string[] } {
  const finding = (code: string, parts: { found?: string; limit?: string; detail?: string } = {}): Check => ({
    verdict: 'not proven',
    finding: findingOf(frame, code, { ...parts, facts: [fact] }),
  })
  if (record.kind === 'not tested, line in service')
    return { checks: [finding('not-tested')], found: record.kind, working: [] }
  const readings = (record.readings ?? []).filter((one) => one.at && one.pressure)
  const [first, last] = [readings[0], readings.at(-1)]
  if (!first || !last || readings.length < 2)
    return {
      checks: [finding('too-few-readings', { found: `${readings.length}`, limit: '2' })],
      found: `${readings.length} readings`,
      working: [],
    }
  const ms = instantOf(last.at) - instantOf(first.at)
  const checks: Check[] = [leakCheck(record, finding)]
  const held = showMinutes(ms)
  if (compareMinutes(ms, rule.minMinutes) < 0)
    checks.push({
      ...finding('held-too-short', { found: held, limit: `≥ ${showDecimal(rule.minMinutes)} min` }),
      verdict: 'fail',
    })
  const limit = `≤ ${showDecimal(rule.maxDrop)} MPa`
  const drop = dropOf(rule, first, last, frame)
  if ('code' in drop)
    return {
      checks: [...checks, finding(drop.code, { limit, ...(drop.detail ? { detail: drop.detail } : {}) })],
      found: `${held}, drop not computed`,
      working: [],
    }
  checks.push(judgeDrop(drop, rule, limit, finding))
  const working = [
    `${showClock(first.at)} ${showReadingUnit(first.pressure)} to ${showClock(last.at)} ${showReadingUnit(last.pressure)} over ${held}`,
    ...drop.working,
  ]
  return { checks, found: `${record.kind ?? 'test'}: drop ${drop.shown} MPa over ${held}`, working }
}

type Drop = { exact: Fraction | null; mpa: number; shown: string; working: string[] }
type TestReading = NonNullable<DraftOf<'pressure-test'>['readings']>[number]

function dropOf(
  { correction }: DropRule,
  first: TestReading,
  last: TestReading,
  frame: JudgeFrame,
): Drop | { code: string; detail?: string } {
  const hold = correctedHold(correction, first, last, frame.context.design)
  if ('code' in hold) return hold
  const { p0, p1, corrected } = hold
  if (!corrected) {
    const plain = minusFraction(p0, p1)
    return {
      exact: plain,
      mpa: toNumber(plain),
      shown: showExact(plain, Math.max(first.pressure.scale, last.pressure.scale)),
      working: ['steel unchanged, no correction'],
    }
  }
  const working = [
    `steel ${showReadingUnit(first.steel ?? last.pressure)} to ${showReadingUnit(last.steel ?? last.pressure)}: ${corrected.mpaPerK.toFixed(4)} MPa/K, expected ${corrected.expectedMpa.toFixed(4)} MPa`,
  ]
  return { exact: null, mpa: corrected.dropMpa, shown: corrected.dropMpa.toFixed(4), working }
}

/** Floats are compared without slack towards acceptance: a corrected drop a hair over the limit is over it. */
function judgeDrop(
  drop: Drop,
  rule: DropRule,
  limit: string,
  finding: (code: string, parts: { found: string; limit: string }) => Check,
): Check {
  const allowed = fractionOf(rule.maxDrop)
  const over = drop.exact ? compareFractions(drop.exact, allowed) : Math.sign(drop.mpa - toNumber(allowed))
  const rise = drop.exact
    ? compareFractions({ numerator: -drop.exact.numerator, denominator: drop.exact.denominator }, allowed)
    : Math.sign(-drop.mpa - toNumber(allowed))
  const parts = { found: `${drop.shown} MPa`, limit }
  if (over > 0) return { ...finding('drop-too-large', parts), verdict: 'fail' }
  return rise > 0 ? finding('unexplained-rise', parts) : { verdict: 'pass' }
}

function leakCheck(
  record: DraftOf<'pressure-test'>,
  finding: (code: string, parts: { detail: string }) => Check,
): Check {
  if (record.noLeak === 'yes') return { verdict: 'pass' }
  const detail = 'no leak on walk-down'
  return record.noLeak === 'no'
    ? { ...finding('leak-seen', { detail }), verdict: 'fail' }
    : finding('statement-missing', { detail })
}
