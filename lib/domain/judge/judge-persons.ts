import type { PersonState } from '../fold/store-states'
import type { Rule } from '../specification'
import { dayOf, instantOf, type Moment } from '../time'
import { type JudgeFrame, type TakenUse, usesOf } from './frame'
import { type Check, findingOf, notProven, outcomeOf, type RuleOutcome } from './outcome'
import { type QualificationAnswer, qualificationOn, type Task } from './qualification-on'
import type { Question } from './verdict'
import { personStream } from './yield-builder'

/** What a person must be qualified for, by the role in which the record names him; other roles ask for no qualification. */
const TASK_OF: Partial<Record<string, Task>> = {
  mixer: 'applicator',
  placer: 'applicator',
  primer: 'applicator',
  wrapper: 'applicator',
  applicator: 'applicator',
  supervisor: 'supervisor',
  inspector: 'inspector',
}

/**
 * Everyone who did qualified work was qualified for it, for the geometry, on that day; or worked under a qualified supervisor, which is said. The verdict follows
 * the qualifications as corrected; where a correction after the release changes it, the result is in question too.
 */
export function judgePersons(_rule: Extract<Rule, { kind: 'persons-qualified' }>, frame: JudgeFrame): RuleOutcome {
  const uses = usesOf(frame, (use) => use.of.startsWith('person:') && TASK_OF[use.role] !== undefined)
  if (uses.length === 0) return notProven(frame, 'no-person', 'nobody recorded')
  const distinct = [
    ...new Map(uses.map((use) => [`${use.of} ${use.role} ${dayOf(use.at)} ${use.supervisedBy ?? ''}`, use])).values(),
  ]
  const judged = distinct.map((use) => checkUse(use, frame, null))
  const found = [...new Set(judged.map((one) => one.found))]
  return outcomeOf(judged, found.join(', '), { working: found, questions: correctionQuestions(distinct, frame) })
}

type PersonCheck = Check & { found: string }

function checkUse(use: TakenUse, frame: JudgeFrame, knownAt: Moment | null): PersonCheck {
  const person = frame.context.persons[use.of]
  const task = TASK_OF[use.role] ?? 'applicator'
  if (!person)
    return {
      verdict: 'not proven',
      found: `${use.of} not known`,
      finding: findingOf(frame, 'person-unknown', { mark: use.of, facts: [use.fact] }),
    }
  const day = dayOf(use.at)
  const answer = qualificationOn(person, task, day, frame.context.geometry, knownAt)
  if (answer.state === 'qualified') return { verdict: 'pass', found: `${person.name} ${answer.by.body.number}` }
  const supervisor: PersonState | undefined = use.supervisedBy
    ? frame.context.persons[personStream(use.supervisedBy)]
    : undefined
  const above = supervisor ? qualificationOn(supervisor, 'supervisor', day, frame.context.geometry, knownAt) : null
  if (supervisor && above?.state === 'qualified')
    return { verdict: 'pass', found: `${person.name} supervised by ${supervisor.name} ${above.by.body.number}` }
  return refusalOf(answer, use, person, frame)
}

function refusalOf(answer: QualificationAnswer, use: TakenUse, person: PersonState, frame: JudgeFrame): PersonCheck {
  const day = dayOf(use.at)
  const parts = { mark: person.name, found: day, facts: [use.fact, answer.state === 'none' ? null : answer.by.id] }
  const found = `${person.name} not qualified`
  const detail = `${use.role}${use.into ? ` of ${use.into}` : ''}`
  if (answer.state === 'none')
    return { verdict: 'not proven', found, finding: findingOf(frame, 'qualification-missing', { ...parts, detail }) }
  const of = answer.by.body
  if (answer.state === 'scope-not-stated')
    return {
      verdict: 'not proven',
      found,
      finding: findingOf(frame, 'qualification-scope-missing', {
        ...parts,
        limit: frame.context.geometry,
        detail: of.number,
      }),
    }
  if (answer.state === 'out-of-scope')
    return {
      verdict: 'fail',
      found,
      finding: findingOf(frame, 'qualification-scope', {
        ...parts,
        found: (of.geometries ?? []).join(', '),
        limit: frame.context.geometry,
        detail: of.number,
      }),
    }
  if (answer.state === 'not-yet')
    return {
      verdict: 'fail',
      found,
      finding: findingOf(frame, 'qualification-not-yet', { ...parts, detail: `${detail}, ${of.number}` }),
    }
  return {
    verdict: 'fail',
    found,
    finding: findingOf(frame, 'qualification-lapsed', {
      ...parts,
      limit: of.validTo,
      detail: `${detail}, ${of.number}`,
    }),
  }
}

/** A question for each correction made after the release that changes what a use is judged. */
function correctionQuestions(uses: readonly TakenUse[], frame: JudgeFrame): Question[] {
  const { releasedAt } = frame.context
  if (releasedAt === null) return []
  const causes = uses.flatMap((use) => {
    if (checkUse(use, frame, null).verdict === checkUse(use, frame, releasedAt).verdict) return []
    const people = [
      frame.context.persons[use.of],
      use.supervisedBy ? frame.context.persons[personStream(use.supervisedBy)] : undefined,
    ]
    return people
      .flatMap((one) => one?.qualifications ?? [])
      .filter((fact) => fact.body.corrects && instantOf(fact.observedAt) > instantOf(releasedAt))
  })
  return [...new Map(causes.map((fact) => [fact.id, fact])).values()].map((fact) => ({
    cause: fact.id,
    causeKind: 'qualification corrected',
    stream: fact.stream,
    since: fact.observedAt,
  }))
}
