import type { FactId, PersonId, StreamId } from '@/lib/domain/facts/fact'
import type { Role } from '@/lib/domain/roles'
import type { CalendarDay } from '@/lib/domain/time'

/** A role held in one project from a day on, both days included where a last day is stated. */
export type Grant = {
  project: StreamId
  fact: FactId
  role: Role
  approve: boolean
  from: CalendarDay
  to: CalendarDay | null
}

/** Who is asking: an account, the person it belongs to, the tenant, and the roles that the projects' facts grant. */
export type Actor = {
  userId: string
  tenant: string
  person: PersonId
  name: string
  grants: readonly Grant[]
  /** Roles held on a day in a project, or in any project of the tenant. */
  rolesOn(project: StreamId | 'any', day: CalendarDay): Role[]
  /** Whether the extra right `approve` is held with the role on that day. */
  approvesOn(project: StreamId | 'any', day: CalendarDay, role: Role): boolean
}

/** Make an actor from what is known of an account and its person. */
export function actorOf(who: Pick<Actor, 'userId' | 'tenant' | 'person' | 'name' | 'grants'>): Actor {
  const held = (project: StreamId | 'any', day: CalendarDay) =>
    who.grants.filter(
      (grant) =>
        (project === 'any' || grant.project === project) && grant.from <= day && (grant.to === null || day <= grant.to),
    )
  return {
    ...who,
    rolesOn: (project, day) => [...new Set(held(project, day).map((grant) => grant.role))],
    approvesOn: (project, day, role) => held(project, day).some((grant) => grant.role === role && grant.approve),
  }
}
