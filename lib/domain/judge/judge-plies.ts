import { isRefused } from '@/lib/calc/refusal'
import { wrapOverlap } from '@/lib/calc/wrap-geometry'
import { compareFractions, type Fraction, fractionOf, showDecimal, toNumber } from '../decimal'
import type { Rule } from '../specification'
import { measuredExact } from './exact-units'
import { type JudgeFrame, recordsOfType } from './frame'
import { type Check, findingOf, notProven, outcomeOf, type RuleOutcome } from './outcome'

/** As many plies as designed: by the count of each of so many persons, and by the plies recorded (wet lay-up) or the passes of the tape at its thinnest. */
export function judgePlies(rule: Extract<Rule, { kind: 'plies' }>, frame: JudgeFrame): RuleOutcome {
  const { design } = frame.context
  if (!design) return notProven(frame, 'design-missing', 'no design sheet', { limit: 'plies' })
  const designed = fractionOf(design.plies)
  const limit = `${showDecimal(design.plies)} plies`
  const counts = recordsOfType(frame.context.records, 'ply-count').flatMap(({ record, judged }) =>
    record.plies && record.countedBy ? [{ plies: record.plies, by: record.countedBy, fact: judged.fact }] : [],
  )
  const persons = new Set(counts.map((one) => one.by))
  const checks = counts.map(
    (one): Check =>
      compareFractions(fractionOf(one.plies), designed) === 0
        ? { verdict: 'pass' }
        : {
            verdict: 'fail',
            finding: findingOf(frame, 'ply-count-differs', {
              mark: nameOf(frame, one.by),
              found: `${showDecimal(one.plies)} plies`,
              limit,
              facts: [one.fact],
            }),
          },
  )
  if (persons.size < rule.countedBy)
    checks.push({
      verdict: 'not proven',
      finding: findingOf(frame, 'too-few-counts', {
        found: `${persons.size}`,
        limit: `${rule.countedBy}`,
        facts: counts.map((one) => one.fact),
      }),
    })
  const recorded =
    frame.context.specification.body.wrap === 'wet lay-up'
      ? checkPlies(frame, designed, limit)
      : checkPasses(frame, designed, limit)
  const found = [...counts.map((one) => `${showDecimal(one.plies)} by ${nameOf(frame, one.by)}`), recorded.found].join(
    ', ',
  )
  return outcomeOf([...checks, recorded], found, { figures: { count: persons.size, planned: rule.countedBy } })
}

function checkPlies(frame: JudgeFrame, designed: Fraction, limit: string): Check & { found: string } {
  const plies = recordsOfType(frame.context.records, 'ply')
  const numbers = new Set(plies.map(({ record }) => record.plyNo))
  const found = `${numbers.size} recorded`
  const parts = { found, limit, facts: plies.map(({ judged }) => judged.fact) }
  const order = compareFractions({ numerator: BigInt(numbers.size), denominator: 1n }, designed)
  if (order < 0) return { verdict: 'not proven', found, finding: findingOf(frame, 'plies-not-recorded', parts) }
  if (order > 0 || numbers.size < plies.length)
    return {
      verdict: 'fail',
      found,
      finding: findingOf(frame, 'ply-count-differs', { ...parts, found: `${plies.length} plies recorded` }),
    }
  return { verdict: 'pass', found }
}

/** Tape: passes times the plies of one pass at the widest pitch, at its thinnest. */
function checkPasses(frame: JudgeFrame, designed: Fraction, limit: string): Check & { found: string } {
  const wrap = recordsOfType(frame.context.records, 'tape-wrap').at(-1)
  const width = measuredExact(wrap?.record.tapeWidth, 'mm')
  const pitches = (wrap?.record.pitches ?? []).flatMap((one) => measuredExact(one, 'mm') ?? [])
  const passes = wrap?.record.passes
  const facts = [wrap?.judged.fact ?? null]
  if (!wrap || !width || pitches.length === 0 || passes === undefined)
    return {
      verdict: 'not proven',
      found: 'wrap not recorded',
      finding: findingOf(frame, 'plies-not-recorded', { found: 'no wrap', limit, facts }),
    }
  const answer = wrapOverlap({ bandMm: toNumber(width), pitchMm: Math.max(...pitches.map(toNumber)) })
  if (isRefused(answer))
    return { verdict: 'fail', found: 'tape does not touch', finding: findingOf(frame, 'tape-apart', { limit, facts }) }
  const found = `${passes} passes of at least ${answer.pliesMin}`
  if (compareFractions({ numerator: BigInt(passes * answer.pliesMin), denominator: 1n }, designed) >= 0)
    return { verdict: 'pass', found }
  return { verdict: 'fail', found, finding: findingOf(frame, 'ply-count-differs', { found, limit, facts }) }
}

function nameOf(frame: JudgeFrame, person: string): string {
  return Object.values(frame.context.persons).find((one) => one.id === person)?.name ?? person
}
