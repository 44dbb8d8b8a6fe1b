import type { PersonId, StreamId } from '@/lib/domain/facts/fact'
import type { Fact, FactOf } from '@/lib/domain/facts/fact-kinds'
import { foldPerson } from '@/lib/domain/fold/fold-person'
import { foldProject } from '@/lib/domain/fold/fold-project'
import { ofKind, orderFacts } from '@/lib/domain/fold/order-facts'
import type { PersonState } from '@/lib/domain/fold/store-states'
import type { CalendarDay } from '@/lib/domain/time'
import { loadStreamsOfKind } from '@/lib/server/store/load-facts'
import { loadAccountHolders, type PersonStanding, personStanding } from './person-list-view'
import { loadNames, type ReadingDesk } from './reading-desk'
import { loadSigningKeyRows, type SigningKeyRow } from './signing-keys-view'
import { type EventLine, eventLine } from './trace-event-line'

export type QualificationRow = {
  fact: FactOf<'qualification-recorded'>
  correctedBy: FactOf<'qualification-recorded'> | null
  today: 'valid' | 'ended' | 'not yet'
}
export type GrantRow = {
  project: StreamId
  projectName: string
  role: string
  approve: boolean
  from: CalendarDay
  to: CalendarDay | null
  isToday: boolean
}
export type PersonView = {
  state: PersonState
  standing: PersonStanding
  qualifications: QualificationRow[]
  grants: GrantRow[]
  events: EventLine[]
  leftOn: CalendarDay | null
  hasAccount: boolean
  /** Keys that sign for the person on devices. */
  keys: SigningKeyRow[]
  names: Record<PersonId, string>
  length: number
}

/** A person as their page shows them: qualifications with corrections beside what they correct, and roles by day; null when never registered. */
export async function loadPersonView({ desk, actor }: ReadingDesk, stream: StreamId): Promise<PersonView | null> {
  const facts = await desk.factsOf(stream)
  const state = facts && foldPerson(facts, stream, desk.now(null))
  if (!facts || !state) return null
  const today = desk.today(null)
  const names = await loadNames(desk)
  const projects = await loadStreamsOfKind(desk.store, actor.tenant, 'project')
  const grants = [...new Set(projects.facts.map((fact) => fact.stream))].flatMap((project): GrantRow[] => {
    const folded = foldProject(projects.facts, project, desk.now(null))
    return (folded?.grants ?? [])
      .filter((one) => one.person === state.id)
      .map(({ role, approve, from, to }) => ({
        project,
        projectName: folded?.opened.body.name ?? project,
        role,
        approve,
        from,
        to,
        isToday: from <= today && (to === null || today <= to),
      }))
  })
  return {
    state,
    standing: personStanding(state, today),
    grants,
    length: facts.length,
    keys: await loadSigningKeyRows({ desk, actor }, state.id),
    names,
    leftOn: ofKind(facts, 'person-left').at(-1)?.body.on ?? null,
    hasAccount: (await loadAccountHolders({ desk, actor })).has(state.id),
    qualifications: state.qualifications.map(
      (fact): QualificationRow => ({
        fact,
        correctedBy: state.qualifications.find((one) => one.body.corrects === fact.id) ?? null,
        today: fact.body.validTo < today ? 'ended' : (fact.body.validFrom ?? today) > today ? 'not yet' : 'valid',
      }),
    ),
    events: orderFacts(facts, desk.now(null)).flatMap((fact) => {
      const words = wordsOf(fact)
      return words ? [eventLine(fact, names, words[0], words[1])] : []
    }),
  }
}

function wordsOf(fact: Fact): [string, string] | null {
  switch (fact.kind) {
    case 'person-registered':
      return ['Registered', `${fact.body.name}, ${fact.body.party}`]
    case 'person-renamed':
      return ['Name changed', `${fact.body.name}: ${fact.body.reason}`]
    case 'qualification-recorded':
      return [
        fact.body.corrects ? 'Qualification corrected' : 'Qualification recorded',
        `${fact.body.number} ${fact.body.task}, to ${fact.body.validTo}${fact.body.reason ? `: ${fact.body.reason}` : ''}`,
      ]
    case 'person-left':
      return ['Left', fact.body.on]
    default:
      return null
  }
}
