import type { StreamId } from '@/lib/domain/facts/fact'
import { mayAct, PERMISSIONS } from '@/lib/domain/permissions'
import { ROLES } from '@/lib/domain/roles'
import type { Desk } from '@/lib/server/commands/desk'
import type { Refusal } from '@/lib/server/commands/refusal'
import { streamsOfProjects } from '@/lib/server/store/hidden-trail'
import { listStreams } from '@/lib/server/store/list-streams'

/** What of a tenant's trail somebody may read: all of it, or all but the streams of projects where they have no such role. */
export type TrailReach = { isWhole: boolean; hidden: StreamId[]; shutProjects: StreamId[] }

/** Roles that read a record as a whole, not only their own part of it. */
export const AUDIT_ROLES = ROLES.filter((role) => PERMISSIONS['read-record'][role] === 'may')

/** Whether somebody reads a whole record in at least one project today. */
export function mayAudit({ actor, today }: Pick<Desk, 'actor' | 'today'>): boolean {
  return mayAct('read-record', actor.rolesOn('any', today(null))) === 'may'
}

/** How far somebody reads the trail of their tenant; null when they read no record as a whole. */
export async function trailReachOf(desk: Desk): Promise<TrailReach | null> {
  if (!mayAudit(desk)) return null
  const { actor, store } = desk
  const today = desk.today(null)
  const projects = (await listStreams(store, actor.tenant, 'project')).map((one) => one.stream)
  const shutProjects = projects.filter((one) => mayAct('read-record', actor.rolesOn(one, today)) !== 'may')
  return {
    isWhole: shutProjects.length === 0,
    hidden: await streamsOfProjects(store, actor.tenant, shutProjects),
    shutProjects,
  }
}

/** The refusal of somebody who reads no record as a whole. */
export const AUDIT_BARRED: Refusal = { code: 'not-allowed', act: 'read the whole trail', needs: [...AUDIT_ROLES] }
