import { compareFractions, toNumber } from '../decimal'
import type { FactId } from '../facts/fact'
import { type Measured, type Reading, showReading, showReadingUnit } from '../reading'
import type { Rule } from '../specification'
import { measuredExact } from './exact-units'
import { type JudgeFrame, recordsOfType } from './frame'
import { type Check, findingOf, notProven, outcomeOf, type RuleOutcome } from './outcome'
import type { DraftOf } from './yield-builder'

type Side = 'min' | 'max'

/** As found against the design's input: hole, diameter, and the wall at the outermost stations, where the band ends. Outside it: redesign. */
export function judgeDesignEnvelope(_rule: Extract<Rule, { kind: 'design-envelope' }>, frame: JudgeFrame): RuleOutcome {
  const own = recordsOfType(frame.context.records, 'defect').at(-1)
  const defect: DraftOf<'defect'> | null = own?.record ?? frame.context.defect
  const design = recordsOfType(frame.context.records, 'design').at(-1)?.record ?? frame.context.design
  const envelope = design?.envelope
  if (!defect) return notProven(frame, 'defect-missing', 'no defect record')
  if (!envelope) return notProven(frame, 'design-missing', 'no design sheet', { limit: 'the envelope' })
  const fact = own?.judged.fact ?? null
  const check = (mark: string, value: Measured | undefined, side: Side, limit: Measured) =>
    checkValue(frame, fact, mark, value, side, limit)
  const checks = [
    check('hole axial', defect.holeAxial, 'max', envelope.holeAxialMax),
    check('hole hoop', defect.holeHoop, 'max', envelope.holeHoopMax),
    ...(defect.diameters?.length ? defect.diameters : [undefined]).flatMap((value, index) => [
      check(`D${index + 1}`, value, 'min', envelope.diameterMin),
      check(`D${index + 1}`, value, 'max', envelope.diameterMax),
    ]),
    ...edgeReadings(defect).map(({ mark, reading }) =>
      checkEdge(frame, fact, mark, reading, envelope.minWallAtBandEdge),
    ),
  ]
  if (edgeReadings(defect).length === 0)
    checks.push({
      verdict: 'not proven',
      finding: findingOf(frame, 'measure-missing', { mark: 'wall at the band edge', facts: [fact] }),
    })
  const outside = checks.filter((one) => one.verdict === 'fail').length
  return outcomeOf(
    checks,
    outside === 0 ? 'as found within the envelope, where measured' : `${outside} outside the envelope`,
  )
}

function checkValue(
  frame: JudgeFrame,
  fact: FactId | null,
  mark: string,
  value: Measured | undefined,
  side: Side,
  limit: Measured,
): Check {
  const text = `${side === 'min' ? '≥' : '≤'} ${showReadingUnit(limit)}`
  if (!value)
    return { verdict: 'not proven', finding: findingOf(frame, 'measure-missing', { mark, limit: text, facts: [fact] }) }
  const [found, bound] = [measuredExact(value, 'mm'), measuredExact(limit, 'mm')]
  const parts = { mark, found: showReadingUnit(value), limit: text, facts: [fact] }
  if (!found || !bound) return { verdict: 'not proven', finding: findingOf(frame, 'unit-differs', parts) }
  const distance = compareFractions(found, bound)
  return (side === 'min' ? distance >= 0 : distance <= 0)
    ? { verdict: 'pass' }
    : { verdict: 'fail', finding: findingOf(frame, 'outside-envelope', parts) }
}

function checkEdge(
  frame: JudgeFrame,
  fact: FactId | null,
  mark: string,
  reading: Reading | undefined,
  limit: Measured,
): Check {
  if (reading?.kind === 'number') return checkValue(frame, fact, mark, reading, 'min', limit)
  const parts = { mark, limit: `≥ ${showReadingUnit(limit)}`, facts: [fact] }
  if (reading?.kind === 'through-wall')
    return { verdict: 'fail', finding: findingOf(frame, 'outside-envelope', { ...parts, found: 'TW' }) }
  return {
    verdict: 'not proven',
    finding: findingOf(frame, 'measure-missing', reading ? { ...parts, found: showReading(reading) } : parts),
  }
}

/** What was read at the two outermost stations, all clock positions of the grid. */
function edgeReadings({ grid, wall }: DraftOf<'defect'>): { mark: string; reading: Reading | undefined }[] {
  const stations = (grid?.stations ?? []).toSorted((a, b) => toNumber(a.fromLeak) - toNumber(b.fromLeak))
  const [first, last] = [stations[0], stations.at(-1)]
  if (!first || !last) return []
  const readings = new Map((wall ?? []).map((one) => [one.mark, one.reading]))
  return [...new Set([first.name, last.name])].flatMap((name) =>
    (grid?.clocks ?? []).map((clock) => ({ mark: `${name}-${clock}`, reading: readings.get(`${name}-${clock}`) })),
  )
}
