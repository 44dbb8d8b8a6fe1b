import type { StreamId } from '@/lib/domain/facts/fact'
import { foldProject } from '@/lib/domain/fold/fold-project'
import { loadStreamsOfKind } from '@/lib/server/store/load-facts'
import type { ReadingDesk } from './reading-desk'

export type ProjectRow = {
  stream: StreamId
  name: string
  site: string
  owner: string
  peopleToday: number
  myRoles: string[]
}

/** Projects in which the reader holds a role today; an administrator sees every one. */
export async function loadProjectRows(reading: ReadingDesk): Promise<ProjectRow[]> {
  const { desk, actor, roles } = reading
  const { facts } = await loadStreamsOfKind(desk.store, actor.tenant, 'project')
  const today = desk.today(null)
  const streams = [...new Set(facts.map((fact) => fact.stream))]
  return streams.flatMap((stream): ProjectRow[] => {
    const project = foldProject(facts, stream, desk.now(null))
    const myRoles = actor.rolesOn(stream, today)
    if (!project || (myRoles.length === 0 && !roles.includes('administrator'))) return []
    const { name, site, owner } = project.opened.body
    const people = new Set(
      project.grants
        .filter((one) => one.from <= today && (one.to === null || today <= one.to))
        .map((one) => one.person),
    )
    return [{ stream, name, site, owner, peopleToday: people.size, myRoles }]
  })
}
