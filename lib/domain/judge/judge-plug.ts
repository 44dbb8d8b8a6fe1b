import type { z } from 'zod'
import { clampBandLength } from '@/lib/calc/clamp-band'
import { isAtLeast } from '@/lib/calc/comparison'
import { isRefused } from '@/lib/calc/refusal'
import { compareFractions, type Fraction, fractionOf, plusFraction, showDecimal, toNumber } from '../decimal'
import type { FactId } from '../facts/fact'
import { showReadingUnit } from '../reading'
import type { PlugPlateBand } from '../records/arrest'
import type { Rule } from '../specification'
import { instantOf, showClock } from '../time'
import { measuredExact } from './exact-units'
import { type JudgeFrame, recordsOfType } from './frame'
import { showMinutes } from './judge-window'
import { type Check, findingOf, notProven, outcomeOf, type RuleOutcome } from './outcome'
import { neededMinutes, showFigure } from './time-at-temperature'
import { celsiusOf } from './yield-surface'

type Plug = Partial<z.infer<typeof PlugPlateBand>>
type Judge = (plug: Plug, fact: FactId | null) => Check & { found: string }

function judgePlugs(frame: JudgeFrame, judge: Judge): RuleOutcome {
  const plugs = recordsOfType(frame.context.records, 'arrest').flatMap(({ record, judged }) =>
    record.arrest?.method === 'plug, plate and band' ? [{ plug: record.arrest, fact: judged.fact }] : [],
  )
  if (plugs.length === 0) return notProven(frame, 'no-readings', 'no plug, plate and band')
  const checks = plugs.map(({ plug, fact }) => judge(plug, fact))
  return outcomeOf(checks, checks.map((check) => check.found).join('; '), {
    working: checks.map((check) => check.found),
  })
}

/** The plug was judged hard only after the table's time at the ambient temperature, counted from pressing it on. */
export function judgeHardeningTime(rule: Extract<Rule, { kind: 'hardening-time' }>, frame: JudgeFrame): RuleOutcome {
  return judgePlugs(frame, ({ pressedAt, judgedHardAt, ambient }, fact) => {
    const missing = (code: string, found: string) => ({
      verdict: 'not proven' as const,
      found,
      finding: findingOf(frame, code, { found, facts: [fact] }),
    })
    const celsius = celsiusOf(ambient)
    if (!ambient || !celsius) return missing('temperature-missing', 'ambient not stated')
    const needed = neededMinutes(rule.table, toNumber(celsius))
    if (!needed.ok) return missing(needed.code, showReadingUnit(ambient))
    const limit = `≥ ${showFigure(needed.minutes, 1)} min at ${showReadingUnit(ambient)}`
    if (!pressedAt || !judgedHardAt) return missing('time-missing', `not judged hard yet, ${limit}`)
    const ms = instantOf(judgedHardAt) - instantOf(pressedAt)
    const found = `${showClock(pressedAt)} to ${showClock(judgedHardAt)} = ${showMinutes(ms)}, ${limit}`
    if (isAtLeast(ms / 60_000, needed.minutes)) return { verdict: 'pass', found }
    return {
      verdict: 'fail',
      found,
      finding: findingOf(frame, 'hardening-too-short', { found: showMinutes(ms), limit, facts: [fact] }),
    }
  })
}

/** Putty used against the hole: an ellipse of its axial and hoop size through the nominal wall, times the specification's factor. */
export function judgePlugAmount(rule: Extract<Rule, { kind: 'plug-amount' }>, frame: JudgeFrame): RuleOutcome {
  return judgePlugs(frame, ({ puttyUsed }, fact) => {
    const { defect } = frame.context
    const axial = measuredExact(defect?.holeAxial, 'mm')
    const hoop = measuredExact(defect?.holeHoop, 'mm')
    const wall = measuredExact(defect?.nominalWall, 'mm')
    if (!axial || !hoop || !wall)
      return { verdict: 'not proven', found: 'no defect record', finding: findingOf(frame, 'defect-missing') }
    const needed = (Math.PI / 4) * toNumber(axial) * toNumber(hoop) * toNumber(wall) * toNumber(rule.timesHoleVolume)
    const limit = `≥ ${needed.toFixed(1)} mm³`
    if (!puttyUsed)
      return {
        verdict: 'not proven',
        found: `amount not stated, ${limit}`,
        finding: findingOf(frame, 'mass-missing', { limit, facts: [fact] }),
      }
    const found = `${showDecimal(puttyUsed)} mm³`
    if (isAtLeast(toNumber(puttyUsed), needed)) return { verdict: 'pass', found: `${found}, ${limit}` }
    return {
      verdict: 'fail',
      found: `${found}, ${limit}`,
      finding: findingOf(frame, 'plug-too-small', { found, limit, facts: [fact] }),
    }
  })
}

/** The band was cut long enough for mean girth, build under it and its own thickness, with the tail it was given; and the tail is long enough. */
export function judgeBandLength(rule: Extract<Rule, { kind: 'band-length' }>, frame: JudgeFrame): RuleOutcome {
  return judgePlugs(frame, ({ girths, bandCut, bandTail, bandBuild, bandThickness }, fact) => {
    const girth = meanMm((girths ?? []).map((one) => measuredExact(one, 'mm')))
    const [cut, tail, build, thickness] = [bandCut, bandTail, bandBuild, bandThickness].map((one) =>
      measuredExact(one, 'mm'),
    )
    if (!girth || !cut || !tail || !build || !thickness)
      return {
        verdict: 'not proven',
        found: 'measures missing',
        finding: findingOf(frame, 'measure-missing', { facts: [fact] }),
      }
    const answer = clampBandLength({
      girthMm: toNumber(girth),
      tailMm: toNumber(tail),
      buildMm: toNumber(build),
      bandThicknessMm: toNumber(thickness),
    })
    if (isRefused(answer))
      return {
        verdict: 'not proven',
        found: 'not computed',
        finding: findingOf(frame, 'not-computed', { detail: answer.refused, facts: [fact] }),
      }
    const limit = `≥ ${answer.lengthMm.toFixed(1)} mm`
    const found = `${showFigure(toNumber(cut), 1)} mm`
    const tailLimit = `≥ ${showDecimal(rule.tailAtLeast)} mm`
    if (compareFractions(tail, fractionOf(rule.tailAtLeast)) < 0)
      return {
        verdict: 'fail',
        found: `tail ${showFigure(toNumber(tail), 1)} mm`,
        finding: findingOf(frame, 'tail-too-short', {
          found: `${showFigure(toNumber(tail), 1)} mm`,
          limit: tailLimit,
          facts: [fact],
        }),
      }
    if (isAtLeast(toNumber(cut), answer.lengthMm)) return { verdict: 'pass', found: `${found}, ${limit}` }
    return {
      verdict: 'fail',
      found: `${found}, ${limit}`,
      finding: findingOf(frame, 'band-too-short', { found, limit, facts: [fact] }),
    }
  })
}

function meanMm(values: readonly (Fraction | null)[]): Fraction | null {
  const known = values.flatMap((value) => (value ? [value] : []))
  if (known.length === 0 || known.length < values.length) return null
  const sum = known.reduce(plusFraction)
  return { numerator: sum.numerator, denominator: sum.denominator * BigInt(known.length) }
}
