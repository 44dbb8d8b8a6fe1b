import { isAtLeast } from '@/lib/calc/comparison'
import { cureProgress } from '@/lib/calc/cure-progress'
import { isRefused } from '@/lib/calc/refusal'
import { compareFractions, type Fraction, fractionOf, showDecimal, toNumber } from '../decimal'
import type { Rule } from '../specification'
import { instrumentQuestions } from './corrected-questions'
import { type CurePosition, coldestOf, curePositions, longestHoldMs } from './cure-series'
import { type JudgeFrame, recordsOfType, usesOf } from './frame'
import { type Check, findingOf, notProven, outcomeOf, type RuleOutcome } from './outcome'
import { rowsOf, showFigure } from './time-at-temperature'
import { celsiusOf } from './yield-surface'

type HoldRule = Extract<Rule, { kind: 'cure-hold' }>

/**
 * Every clock position that was logged held the temperature unbroken for the time: the coldest governs, and a probe moved later to a colder position counts.
 * Where the specification wants a probe at the coldest clock position, a cure without one is not proven.
 */
export function judgeCureHold(rule: HoldRule, frame: JudgeFrame): RuleOutcome {
  const positions = curePositions(frame)
  if (positions.length === 0) return notProven(frame, 'no-readings', 'no temperature logged')
  const limit = `≥ ${showDecimal(rule.hours)} h at ≥ ${showDecimal(rule.atLeastTemp)} °C`
  const isRunning = recordsOfType(frame.context.records, 'cure').some(({ record }) => !record.endedAt)
  const checks = positions.map((position) => checkHold(rule, position, limit, isRunning, frame))
  if (rule.probeAtColdest) checks.push(...checkColdestProbe(positions, frame))
  const working = positions.map(
    (position) =>
      `${position.clock} o'clock: longest unbroken ${showHours(longestHoldMs(position, fractionOf(rule.atLeastTemp)))} at or above ${showDecimal(rule.atLeastTemp)} °C`,
  )
  return {
    ...outcomeOf(checks, foundOf(positions), { working, figures: coldestFigures(positions) }),
    questions: loggerQuestions(frame),
  }
}

function checkHold(
  rule: HoldRule,
  position: CurePosition,
  limit: string,
  isRunning: boolean,
  frame: JudgeFrame,
): Check {
  const least = fractionOf(rule.atLeastTemp)
  const held = longestHoldMs(position, least)
  if (isAtLeast(held, toNumber(rule.hours) * 3_600_000)) return { verdict: 'pass' }
  const coldest = coldestOf(position)
  const detail = `longest unbroken ${showHours(held)}`
  const parts = {
    mark: `${position.clock} o'clock`,
    found: coldest?.shown,
    limit,
    detail,
    facts: position.stretches.flat().map((one) => one.fact),
  }
  if (isRunning) return { verdict: 'not proven', finding: findingOf(frame, 'cure-running', parts) }
  const isSinglePointWarm =
    position.stretches.flat().length === 1 && coldest !== null && compareFractions(coldest.temp, least) >= 0
  return isSinglePointWarm
    ? { verdict: 'not proven', finding: findingOf(frame, 'log-too-short', parts) }
    : { verdict: 'fail', finding: findingOf(frame, 'cure-not-held', parts) }
}

/** The coldest clock position is that of the coldest steel reading in the climate records of the repair. */
function checkColdestProbe(positions: readonly CurePosition[], frame: JudgeFrame): Check[] {
  const climates = recordsOfType([...frame.context.records, ...frame.context.otherRecords], 'climate')
  const steel = climates.flatMap(({ record }) =>
    (record.steel ?? []).flatMap((one) => {
      const temp = celsiusOf(one.reading)
      return temp ? [{ clock: one.clock, temp }] : []
    }),
  )
  const coldest = steel.reduce<Fraction | null>(
    (least, one) => (least && compareFractions(least, one.temp) <= 0 ? least : one.temp),
    null,
  )
  if (!coldest) return [{ verdict: 'not proven', finding: findingOf(frame, 'coldest-unknown') }]
  const clocks = [...new Set(steel.filter((one) => compareFractions(one.temp, coldest) === 0).map((one) => one.clock))]
  if (positions.some((one) => clocks.includes(one.clock))) return [{ verdict: 'pass' }]
  return [
    {
      verdict: 'not proven',
      finding: findingOf(frame, 'no-probe-at-coldest', {
        mark: `${clocks.join(' or ')} o'clock`,
        found: positions.map((one) => `${one.clock} o'clock`).join(', '),
      }),
    },
  ]
}

/** Equivalent cure over the maker's table at every clock position: complete at 1. */
export function judgeCureEquivalent(rule: Extract<Rule, { kind: 'cure-equivalent' }>, frame: JudgeFrame): RuleOutcome {
  const positions = curePositions(frame)
  if (positions.length === 0) return notProven(frame, 'no-readings', 'no temperature logged')
  if (rule.table.kind === 'step')
    return notProven(frame, 'table-refused', 'not computed', { detail: 'equivalent cure needs an interpolated table' })
  const judged = positions.map((position) => checkEquivalent(rowsOf(rule.table), position, frame))
  return {
    ...outcomeOf(judged, judged.map((one) => one.found).join(', '), {
      working: judged.map((one) => one.found),
      figures: coldestFigures(positions),
    }),
    questions: loggerQuestions(frame),
  }
}

function checkEquivalent(
  table: [number, number][],
  position: CurePosition,
  frame: JudgeFrame,
): Check & { found: string } {
  const parts = { mark: `${position.clock} o'clock`, facts: position.stretches.flat().map((one) => one.fact) }
  let progress = 0
  for (const stretch of position.stretches) {
    const answer = cureProgress({
      table,
      log: stretch.map((one): [number, number] => [one.atMs / 60_000, toNumber(one.temp)]),
    })
    if (isRefused(answer))
      return {
        verdict: 'not proven',
        found: `${parts.mark} not computed`,
        finding: findingOf(frame, 'not-computed', { ...parts, detail: answer.refused }),
      }
    progress += answer.progress
  }
  const shown = `${parts.mark} ${(Math.floor(progress * 1000 + 1e-6) / 1000).toFixed(3)}`
  if (isAtLeast(progress, 1)) return { verdict: 'pass', found: shown }
  return {
    verdict: 'fail',
    found: shown,
    finding: findingOf(frame, 'cure-incomplete', { ...parts, found: shown, limit: '≥ 1' }),
  }
}

function coldestFigures(positions: readonly CurePosition[]): NonNullable<RuleOutcome['figures']> {
  const { clock, point } = coldestPosition(positions)
  return {
    count: positions.length,
    ...(point ? { worst: point.shown.replace(/ °[CF]$/, ''), worstMark: `${clock} o'clock` } : {}),
  }
}

function foundOf(positions: readonly CurePosition[]): string {
  const { clock, point } = coldestPosition(positions)
  return point ? `coldest ${point.shown} at ${clock} o'clock` : 'no temperature logged'
}

function coldestPosition(positions: readonly CurePosition[]) {
  const all = positions.map((one) => ({ clock: one.clock, point: coldestOf(one) }))
  return all.reduce(
    (coldest, one) =>
      one.point && (!coldest.point || compareFractions(one.point.temp, coldest.point.temp) < 0) ? one : coldest,
    all[0] ?? { clock: '?', point: null },
  )
}

function loggerQuestions(frame: JudgeFrame) {
  return instrumentQuestions(
    frame,
    usesOf(frame, (use) => use.role === 'cure'),
  )
}

function showHours(ms: number): string {
  return `${showFigure(ms / 3_600_000, 2)} h`
}
