import { compareFractions, fractionOf } from '../decimal'
import { showReading, showUnit } from '../reading'
import type { Rule } from '../specification'
import { correctedQuestions } from './corrected-questions'
import { type Bounds, boundsOf } from './exact-limit'
import { type JudgeFrame, plannedCount, readingsOf, type Taken } from './frame'
import { isTaken, judgeReading, type ReadingVerdict } from './judge-reading'
import { tapChecks } from './judge-taps'
import { type Check, findingOf, notProven, outcomeOf, type RuleOutcome } from './outcome'
import { computedPlaces } from './quantity-names'
import { showBeside } from './show-exact'

type EachRule = Extract<Rule, { kind: 'each' }>
type Judged = { taken: Taken; verdict: ReadingVerdict }

/**
 * Every reading within the bounds. A reading outside fails and stands, however many are still to come. Fewer readings than planned, or a mark without one where
 * no count is planned, is not proven, as is a reading that is not of its taps. Questions say what the readings would be with an instrument's known error taken off.
 */
export function judgeEach(rule: EachRule, frame: JudgeFrame): RuleOutcome {
  const readings = readingsOf(frame, rule.quantity)
  const judge = (list: Taken[]) => judgeList(rule, frame, list)
  return { ...judge(readings), questions: correctedQuestions(frame, readings, judge) }
}

function judgeList(rule: EachRule, frame: JudgeFrame, readings: Taken[]): RuleOutcome {
  const bounds = boundsOf(rule, frame.context)
  if (readings.length === 0)
    return {
      ...notProven(frame, 'no-readings', 'no readings', { limit: bounds.text }),
      figures: figuresOf([], bounds, plannedCount(frame, rule.quantity)),
    }
  if (bounds.isDesignMissing)
    return notProven(frame, 'design-missing', `${readings.length} readings`, { limit: bounds.text })
  const judged = readings
    .filter(isTaken)
    .map((taken): Judged => ({ taken, verdict: judgeReading(taken, bounds, frame) }))
  const checks = [
    ...judged.map(({ taken, verdict }) => checkOf(taken, verdict, bounds, frame)),
    ...missingChecks(rule, frame, readings, judged.length),
    ...tapChecks(readings, frame),
  ]
  const planned = plannedCount(frame, rule.quantity)
  return outcomeOf(checks, foundOf(judged, bounds), { figures: figuresOf(judged, bounds, planned) })
}

function checkOf(taken: Taken, { verdict, code, against }: ReadingVerdict, bounds: Bounds, frame: JudgeFrame): Check {
  if (!code) return { verdict }
  const limit = against ? `${against === bounds.min ? '≥' : '≤'} ${against.text}` : bounds.text
  return {
    verdict,
    finding: findingOf(frame, code, {
      mark: taken.mark,
      found: showTakenUnit(taken, bounds),
      limit,
      facts: [taken.fact],
    }),
  }
}

/** Readings that do not count (no access, not inspected, not applicable), and the count that is still short. */
function missingChecks(rule: EachRule, frame: JudgeFrame, readings: Taken[], taken: number): Check[] {
  const planned = plannedCount(frame, rule.quantity)
  if (planned !== null) {
    return taken >= planned
      ? []
      : [
          {
            verdict: 'not proven',
            finding: findingOf(frame, 'too-few-readings', { found: `${taken}`, limit: `${planned}` }),
          },
        ]
  }
  return readings
    .filter((one) => !isTaken(one))
    .map((one) => ({
      verdict: 'not proven',
      finding: findingOf(frame, 'reading-missing', {
        mark: one.mark,
        found: showReading(one.reading),
        facts: [one.fact],
      }),
    }))
}

/** A reading as shown: digits as recorded, or the places of a computed quantity, never rounded across a limit. */
export function showTaken(taken: Taken, bounds: Bounds): string {
  const places = computedPlaces(taken.quantity)
  if (taken.reading.kind !== 'number' || places === null) return showReading(taken.reading)
  return showBeside(
    fractionOf(taken.reading),
    places,
    [bounds.min, bounds.max].flatMap((limit) => (limit ? [limit.value] : [])),
  )
}

function showTakenUnit(taken: Taken, bounds: Bounds): string {
  return 'unit' in taken.reading
    ? `${showTaken(taken, bounds)} ${showUnit(taken.reading.unit)}`
    : showTaken(taken, bounds)
}

/** The worst reading: through-wall first, then the least distance inside the bounds. */
function worstOf(judged: readonly Judged[]): Judged | null {
  const hole = judged.find(({ verdict }) => verdict.code === 'through-wall')
  if (hole) return hole
  return judged.reduce<Judged | null>((worst, one) => {
    if (!one.verdict.distance) return worst
    return worst?.verdict.distance && compareFractions(worst.verdict.distance, one.verdict.distance) <= 0 ? worst : one
  }, null)
}

function figuresOf(
  judged: readonly Judged[],
  bounds: Bounds,
  planned: number | null,
): NonNullable<RuleOutcome['figures']> {
  const worst = worstOf(judged)
  return {
    count: judged.length,
    ...(worst ? { worst: showTaken(worst.taken, bounds), worstMark: worst.taken.mark } : {}),
    ...(planned === null ? {} : { planned }),
  }
}

function foundOf(judged: readonly Judged[], bounds: Bounds): string {
  const worst = worstOf(judged)
  if (!worst) return judged.length === 0 ? 'no readings' : `${judged.length} readings, none decides`
  const word = judged.length === 1 ? '' : bounds.min && bounds.max ? 'worst ' : bounds.min ? 'lowest ' : 'highest '
  return `${word}${showTakenUnit(worst.taken, bounds)} at ${worst.taken.mark}${judged.length === 1 ? '' : `, ${judged.length} readings`}`
}
