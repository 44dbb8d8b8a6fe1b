import type { FactId, StreamId } from '@/lib/domain/facts/fact'
import type { Fact } from '@/lib/domain/facts/fact-kinds'
import { foldProject, type ProjectState } from '@/lib/domain/fold/fold-project'
import { orderFacts } from '@/lib/domain/fold/order-facts'
import type { CalendarDay } from '@/lib/domain/time'
import { loadNames, type ReadingDesk } from './reading-desk'
import { type EventLine, eventLine } from './trace-event-line'

export type RoleRow = {
  grant: FactId
  person: string
  name: string
  role: string
  approve: boolean
  from: CalendarDay
  to: CalendarDay | null
  ended: string | null
  isHeld: boolean
}
export type ProjectView = {
  state: ProjectState
  day: CalendarDay
  roles: RoleRow[]
  events: EventLine[]
  length: number
}

/** A project with its parties and who held which role on a day; null when it is not there or not the reader's to see. */
export async function loadProjectView(
  reading: ReadingDesk,
  stream: StreamId,
  onDay: CalendarDay | null,
): Promise<ProjectView | null> {
  const { desk, actor, roles } = reading
  const facts = await desk.factsOf(stream)
  const state = facts && foldProject(facts, stream, desk.now(null))
  if (!facts || !state) return null
  if (actor.rolesOn(stream, desk.today(null)).length === 0 && !roles.includes('administrator')) return null
  const names = await loadNames(desk)
  const day = onDay ?? desk.today(state.opened.body.utcOffset)
  return {
    state,
    day,
    length: facts.length,
    roles: state.grants.map((one) => ({
      grant: one.fact.id,
      person: one.person,
      name: names[one.person] ?? one.person,
      role: one.role,
      approve: one.approve,
      from: one.from,
      to: one.to,
      ended: one.ended?.body.reason ?? null,
      isHeld: one.from <= day && (one.to === null || day <= one.to),
    })),
    events: orderFacts(facts, desk.now(null)).flatMap((fact) => {
      const words = wordsOf(fact, names)
      return words ? [eventLine(fact, names, words[0], words[1])] : []
    }),
  }
}

function wordsOf(fact: Fact, names: Record<string, string>): [string, string] | null {
  switch (fact.kind) {
    case 'project-opened':
      return ['Opened', `${fact.body.name}, ${fact.body.site}`]
    case 'party-named':
      return [`Party named: ${fact.body.party}`, fact.body.name]
    case 'role-granted':
      return [
        'Role granted',
        `${names[fact.body.person] ?? fact.body.person}: ${fact.body.role}${fact.body.approve ? ' with the right to approve' : ''}, from ${fact.body.from}${fact.body.to ? ` to ${fact.body.to}` : ''}`,
      ]
    case 'role-ended':
      return ['Role ended', `on ${fact.body.on}: ${fact.body.reason}`]
    case 'remark':
      return ['Remark', fact.body.text]
    default:
      return null
  }
}
