import type { PersonId, StreamId } from '../facts/fact'
import type { Fact, FactOf } from '../facts/fact-kinds'
import type { Role } from '../roles'
import type { CalendarDay, Moment } from '../time'
import { ofKind, ofStream, orderFacts } from './order-facts'

export type RoleGrant = {
  fact: FactOf<'role-granted'>
  ended: FactOf<'role-ended'> | null
  person: PersonId
  role: Role
  approve: boolean
  from: CalendarDay
  to: CalendarDay | null
}
export type ProjectState = {
  stream: StreamId
  opened: FactOf<'project-opened'>
  parties: Record<string, string>
  grants: RoleGrant[]
  remarks: FactOf<'remark'>[]
}

/** A project as its stream tells at `asOf`: parties, and every grant of a role with the days on which it holds; or null when never opened. */
export function foldProject(facts: readonly Fact[], stream: StreamId, asOf: Moment): ProjectState | null {
  const own = ofStream(orderFacts(facts, asOf), stream)
  const opened = ofKind(own, 'project-opened')[0]
  if (!opened) return null
  const ends = new Map(ofKind(own, 'role-ended').map((fact) => [fact.body.grant, fact]))
  const grants = ofKind(own, 'role-granted').map((fact): RoleGrant => {
    const ended = ends.get(fact.id) ?? null
    const to = [fact.body.to, ended?.body.on].filter((day) => day !== undefined).sort()[0] ?? null
    return {
      fact,
      ended,
      person: fact.body.person,
      role: fact.body.role,
      approve: fact.body.approve,
      from: fact.body.from,
      to,
    }
  })
  return {
    stream,
    opened,
    parties: Object.fromEntries(ofKind(own, 'party-named').map((fact) => [fact.body.party, fact.body.name])),
    grants,
    remarks: ofKind(own, 'remark'),
  }
}

/** Roles of a person in a project on a day, both days of a grant included, and whether one of them carries the right to approve. */
export function rolesOn(
  project: ProjectState,
  person: PersonId,
  day: CalendarDay,
): { roles: Role[]; approve: boolean } {
  const held = project.grants.filter(
    (one) => one.person === person && one.from <= day && (one.to === null || day <= one.to),
  )
  return {
    roles: [...new Set(held.map((one) => one.role))],
    approve: held.some((one) => one.approve && one.role === 'inspector'),
  }
}
