import { compareFractions } from '../decimal'
import { quarantineAt } from '../fold/quarantines'
import type { BatchState } from '../fold/store-states'
import { type Measured, showReadingUnit } from '../reading'
import type { Rule } from '../specification'
import { CalendarDay, dayOf, instantOf, showMoment } from '../time'
import { measuredExact } from './exact-units'
import { type JudgeFrame, recordsOfType, type TakenUse, usesOf } from './frame'
import { type Check, findingOf, notProven, outcomeOf, type RuleOutcome } from './outcome'
import type { Question } from './verdict'

/**
 * Every batch used was in date at its use (the whole last day at the place counts), and neither recalled nor quarantined then. At the materials point the day is
 * that of planned use. A recall after the use puts the result in question, a quarantine after it changes nothing. A batch received without an expiry has none.
 */
export function judgeBatches(_rule: Extract<Rule, { kind: 'batches-valid' }>, frame: JudgeFrame): RuleOutcome {
  const uses = usesOf(frame, (use) => use.of.startsWith('batch:') && use.role !== 'refused')
  if (uses.length === 0) return notProven(frame, 'no-batch', 'no batch recorded')
  const distinct = [...new Map(uses.map((use) => [`${use.of} ${use.at} ${use.fact}`, use])).values()]
  const checks = [...distinct.flatMap((use) => checkUse(use, frame)), ...storageChecks(frame)]
  const states = [...new Set(distinct.map((use) => use.of))].map((of) => ({ of, state: frame.context.batches[of] }))
  const working = states.map(
    ({ of, state }) =>
      `${state?.number ?? of}: ${state ? (state.expiresOn ? `use by ${state.expiresOn}` : 'no expiry stated') : 'not known'}`,
  )
  return outcomeOf(checks, states.map(({ of, state }) => state?.number ?? of).join(', '), {
    working,
    questions: recallQuestions(distinct, frame),
  })
}

function checkUse(use: TakenUse, frame: JudgeFrame): Check[] {
  const batch = frame.context.batches[use.of]
  if (!batch)
    return [{ verdict: 'not proven', finding: findingOf(frame, 'batch-unknown', { mark: use.of, facts: [use.fact] }) }]
  const day = dayOfUse(use)
  const parts = { mark: batch.number, found: day, facts: [use.fact] }
  const checks: Check[] = []
  if (batch.expiresOn && day > batch.expiresOn)
    checks.push({ verdict: 'fail', finding: findingOf(frame, 'batch-expired', { ...parts, limit: batch.expiresOn }) })
  if (batch.recalled && instantOf(batch.recalled.observedAt) <= instantOf(use.at))
    checks.push({
      verdict: 'fail',
      finding: findingOf(frame, 'batch-recalled', {
        ...parts,
        detail: batch.recalled.body.reason,
        facts: [use.fact, batch.recalled.id],
      }),
    })
  else {
    const quarantine = quarantineAt(batch.quarantines, use.at)
    if (quarantine)
      checks.push({
        verdict: 'fail',
        finding: findingOf(frame, 'batch-quarantined', {
          mark: batch.number,
          found: showMoment(use.at),
          limit: showMoment(quarantine.from),
          detail: quarantine.reason,
          facts: [use.fact, quarantine.fact],
        }),
      })
  }
  return checks.length > 0 ? checks : [{ verdict: 'pass' }]
}

/** The day of use at the place; a material looked at beforehand is judged on the day it is planned to be used. */
function dayOfUse(use: TakenUse): CalendarDay {
  const { record } = use.record
  const planned = record.type === 'materials' ? CalendarDay.safeParse(record.plannedUseOn) : null
  return planned?.success ? planned.data : dayOf(use.at)
}

function recallQuestions(uses: readonly TakenUse[], frame: JudgeFrame): Question[] {
  const recalled = uses.flatMap((use) => {
    const batch: BatchState | undefined = frame.context.batches[use.of]
    return batch?.recalled && instantOf(batch.recalled.observedAt) > instantOf(use.at) ? [batch.recalled] : []
  })
  return [...new Set(recalled)].map((fact) => ({
    cause: fact.id,
    causeKind: 'batch recalled',
    stream: fact.stream,
    since: fact.observedAt,
  }))
}

/** Storage as logged lies within what the label asks, where both are stated. */
function storageChecks(frame: JudgeFrame): Check[] {
  return recordsOfType(frame.context.records, 'materials').flatMap(({ record, judged }) =>
    (record.lines ?? [])
      .filter((line) => line.decision !== 'refused')
      .flatMap((line) => {
        const received = frame.context.batches[line.batch]?.received
        const number = frame.context.batches[line.batch]?.number ?? line.batch
        const outside = (logged: Measured | undefined, limit: Measured | undefined, isMin: boolean): Check[] => {
          const [value, bound] = [measuredExact(logged, 'degC'), measuredExact(limit, 'degC')]
          if (
            !logged ||
            !limit ||
            !value ||
            !bound ||
            (isMin ? compareFractions(value, bound) >= 0 : compareFractions(value, bound) <= 0)
          )
            return []
          return [
            {
              verdict: 'fail',
              finding: findingOf(frame, 'stored-outside-range', {
                mark: number,
                found: showReadingUnit(logged),
                limit: `${isMin ? '≥' : '≤'} ${showReadingUnit(limit)}`,
                facts: [judged.fact],
              }),
            },
          ]
        }
        return [
          ...outside(line.storedMin, received?.storageMin, true),
          ...outside(line.storedMax, received?.storageMax, false),
        ]
      }),
  )
}
