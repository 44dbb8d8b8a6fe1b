import { isAtMost } from '@/lib/calc/comparison'
import { toNumber } from '../decimal'
import type { FactId } from '../facts/fact'
import { type Measured, showReadingUnit } from '../reading'
import type { Rule } from '../specification'
import { instantOf, type Moment, showClock } from '../time'
import { type JudgeFrame, recordsOfType } from './frame'
import { showMinutes } from './judge-window'
import { mixesOf, usedAt } from './mixes'
import { type Check, findingOf, notProven, outcomeOf, type RuleOutcome } from './outcome'
import { showFigure, workingMinutes } from './time-at-temperature'
import { celsiusOf } from './yield-surface'

type WorkingTimeRule = Extract<Rule, { kind: 'working-time' }>
type Run = {
  mark: string
  from: Moment | undefined
  to: Moment | null
  temp: Measured | undefined
  fact: FactId | null
}
type RunCheck = Check & { working: string }

/**
 * Every mix or roll used within the table's time at its own temperature. A scrapped mix that was never used is left out. Not proven while it is in use, and
 * without its temperature; a temperature above the table fails.
 */
export function judgeWorkingTime(rule: WorkingTimeRule, frame: JudgeFrame): RuleOutcome {
  const runs = rule.of === 'tape-roll' ? rollsOf(frame) : runsOf(frame, rule.of)
  if (runs.length === 0) return notProven(frame, 'no-readings', rule.of === 'tape-roll' ? 'no roll' : 'no mix')
  const checks = runs.map((run) => checkRun(rule, run, frame))
  return outcomeOf(checks, checks.map((check) => check.working).join('; '), {
    figures: { count: runs.length },
    working: checks.map((check) => check.working),
  })
}

function rollsOf(frame: JudgeFrame): Run[] {
  return recordsOfType(frame.context.records, 'tape-roll').map(({ record, judged }) => ({
    mark: `roll ${record.rollNo ?? '?'}`,
    from: record.soakStart,
    to: record.wrapEnd ?? null,
    temp: record.surface,
    fact: judged.fact,
  }))
}

function runsOf(frame: JudgeFrame, of: 'filler-mix' | 'resin-mix'): Run[] {
  return mixesOf(frame, [of]).flatMap((mix) => {
    const to = usedAt(frame, mix)
    return mix.record.scrapped && !to
      ? []
      : [{ mark: mix.mark, from: mix.record.startedAt, to, temp: mix.record.resinTemp, fact: mix.fact }]
  })
}

function checkRun(rule: WorkingTimeRule, run: Run, frame: JudgeFrame): RunCheck {
  const { mark, from, to, temp, fact } = run
  const answer = (
    verdict: Check['verdict'],
    code: string | null,
    working: string,
    parts: { found?: string; limit?: string } = {},
  ): RunCheck => ({
    verdict,
    working: `${mark}: ${working}`,
    ...(code ? { finding: findingOf(frame, code, { mark, ...parts, facts: [fact] }) } : {}),
  })
  const celsius = celsiusOf(temp)
  if (!from) return answer('not proven', 'start-missing', 'start not stated')
  if (!temp || !celsius) return answer('not proven', 'temperature-missing', 'temperature not stated')
  const life = workingMinutes(rule.table, toNumber(celsius))
  if (!life.ok)
    return answer(
      life.code === 'too-warm' ? 'fail' : 'not proven',
      life.code,
      `${showReadingUnit(temp)}: no time in the table`,
      { found: showReadingUnit(temp) },
    )
  const elapsedMs = instantOf(to ?? frame.context.asOf) - instantOf(from)
  const found = showMinutes(elapsedMs)
  const limit = `${showFigure(life.minutes, 2)} min at ${showReadingUnit(temp)}`
  const words = `${showClock(from)} to ${to ? showClock(to) : 'now'} = ${found} of ${limit}`
  if (elapsedMs < 0) return answer('not proven', 'end-before-start', words, { found, limit })
  if (!isAtMost(elapsedMs / 60_000, life.minutes))
    return answer('fail', 'working-time-exceeded', words, { found, limit })
  return to ? answer('pass', null, words) : answer('not proven', 'working-time-running', words, { found, limit })
}
