import type { FactOf } from '../facts/fact-kinds'
import type { PersonState } from '../fold/store-states'
import { type CalendarDay, dayOf, instantOf, type Moment } from '../time'

export type QualificationFact = FactOf<'qualification-recorded'>
export type Task = QualificationFact['body']['task']
export type Geometry = 'straight' | 'bend' | 'tee' | 'nozzle'
export type QualificationAnswer =
  | { state: 'qualified'; by: QualificationFact }
  | { state: 'lapsed' | 'not-yet' | 'out-of-scope' | 'scope-not-stated'; by: QualificationFact }
  | { state: 'none' }

const BEST_FIRST = ['qualified', 'scope-not-stated', 'out-of-scope', 'lapsed', 'not-yet'] as const

/**
 * Whether a person was qualified for a task on a day, by the qualifications known at a moment (null: all that are known now). A correction replaces what it
 * corrects and keeps its first day. Only an applicator's qualification is bound to a geometry.
 */
export function qualificationOn(
  person: PersonState,
  task: Task,
  day: CalendarDay,
  geometry: Geometry,
  knownAt: Moment | null,
): QualificationAnswer {
  const known = person.qualifications.filter(
    (one) => knownAt === null || instantOf(one.observedAt) <= instantOf(knownAt),
  )
  const standing = known.filter(
    (one) => one.body.task === task && !known.some((other) => other.body.corrects === one.id),
  )
  const answers = standing.map((by) => ({ state: stateOn(by, known, day, geometry), by }))
  for (const state of BEST_FIRST) {
    const answer = answers
      .filter((one) => one.state === state)
      .toSorted((a, b) => b.by.body.validTo.localeCompare(a.by.body.validTo))[0]
    if (answer) return answer
  }
  return { state: 'none' }
}

function stateOn(
  one: QualificationFact,
  known: readonly QualificationFact[],
  day: CalendarDay,
  geometry: Geometry,
): (typeof BEST_FIRST)[number] {
  if (day > one.body.validTo) return 'lapsed'
  if (day < firstDay(one, known)) return 'not-yet'
  if (one.body.task !== 'applicator') return 'qualified'
  if (!one.body.geometries) return 'scope-not-stated'
  return one.body.geometries.includes(geometry) ? 'qualified' : 'out-of-scope'
}

/** First day of validity: as stated, else as stated in what it corrects, else the day the first of them was put on record. */
function firstDay(one: QualificationFact, known: readonly QualificationFact[]): CalendarDay {
  if (one.body.validFrom) return one.body.validFrom
  const corrected = known.find((other) => other.id === one.body.corrects && other !== one)
  return corrected
    ? firstDay(
        corrected,
        known.filter((other) => other !== one),
      )
    : dayOf(one.observedAt)
}
