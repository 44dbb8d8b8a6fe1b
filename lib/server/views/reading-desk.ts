import { cache } from 'react'
import type { PersonId, StreamId } from '@/lib/domain/facts/fact'
import { foldPerson } from '@/lib/domain/fold/fold-person'
import type { Role } from '@/lib/domain/roles'
import type { Actor } from '@/lib/server/auth/actor'
import { currentActor } from '@/lib/server/auth/current-actor'
import type { Desk } from '@/lib/server/commands/desk'
import { openDesk } from '@/lib/server/commands/open-desk'
import { listStreams } from '@/lib/server/store/list-streams'
import { loadStreams } from '@/lib/server/store/load-stream'

/** The desk at which a page reads, for the person who asks. */
export type ReadingDesk = { desk: Desk; actor: Actor; roles: Role[] }

/** Who is asking and their desk, once a request; null when nobody is signed in. */
export const openReadingDesk = cache(async (): Promise<ReadingDesk | null> => {
  const actor = await currentActor()
  if (!actor) return null
  const desk = await openDesk(actor)
  return { desk, actor, roles: actor.rolesOn('any', desk.today(null)) }
})

/** Whether the person may read the record of a project: every role there but the administrator's alone. */
export function mayRead({ actor, desk }: ReadingDesk, project: StreamId): boolean {
  return actor.rolesOn(project, desk.today(null)).some((role) => role !== 'administrator')
}

/** Names of the tenant's persons by id. */
export const loadNames = cache(async (desk: Desk): Promise<Record<PersonId, string>> => {
  const streams = (await listStreams(desk.store, desk.actor.tenant, 'person')).map((one) => one.stream)
  const { facts } = await loadStreams(desk.store, desk.actor.tenant, streams)
  const names: Record<PersonId, string> = {}
  for (const stream of streams) {
    const person = foldPerson(facts, stream, desk.now(null))
    if (person) names[person.id] = person.name
  }
  return names
})
