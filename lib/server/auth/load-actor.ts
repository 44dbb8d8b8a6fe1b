import { and, eq } from 'drizzle-orm'
import { accountPersons } from '@/db/schema'
import { PersonId, type StreamId, streamOf } from '@/lib/domain/facts/fact'
import { foldPerson } from '@/lib/domain/fold/fold-person'
import { foldProject } from '@/lib/domain/fold/fold-project'
import { ofKind } from '@/lib/domain/fold/order-facts'
import { dayOf } from '@/lib/domain/time'
import { listStreams } from '@/lib/server/store/list-streams'
import { loadStream, loadStreams } from '@/lib/server/store/load-stream'
import type { Store, TenantId } from '@/lib/server/store/store'
import { type Actor, actorOf, type Grant } from './actor'

/**
 * The actor that a person of a tenant is, with the roles that the projects' facts grant; none after the person left. Null when there is no such person. `userId` is empty for a
 * person without an account.
 */
export async function loadActorOfPerson(store: Store, tenant: TenantId, person: PersonId): Promise<Actor | null> {
  const stream = streamOf('person', person)
  const { facts } = await loadStream(store, tenant, stream)
  const known = foldPerson(facts, stream, store.now())
  if (!known) return null
  const hasLeft = ofKind(facts, 'person-left').some((fact) => fact.body.on < dayOf(store.now()))
  const [tie] = await store.db.queries
    .select({ userId: accountPersons.userId })
    .from(accountPersons)
    .where(and(eq(accountPersons.tenant, tenant), eq(accountPersons.personId, person)))
  return actorOf({
    userId: tie?.userId ?? '',
    tenant,
    person,
    name: known.name,
    grants: hasLeft ? [] : await loadGrants(store, tenant, person),
  })
}

/** The actor that an account is in a tenant; without a tenant named, in its only one. Null when the account belongs to no person there. */
export async function loadActorOfAccount(store: Store, userId: string, tenant: TenantId | null): Promise<Actor | null> {
  const ties = await store.db.queries.select().from(accountPersons).where(eq(accountPersons.userId, userId))
  const tie = tenant === null ? (ties.length === 1 ? ties[0] : undefined) : ties.find((one) => one.tenant === tenant)
  return tie ? loadActorOfPerson(store, tie.tenant, PersonId.parse(tie.personId)) : null
}

async function loadGrants(store: Store, tenant: TenantId, person: PersonId): Promise<Grant[]> {
  const projects = await listStreams(store, tenant, 'project')
  const { facts } = await loadStreams(
    store,
    tenant,
    projects.map((one) => one.stream),
  )
  return projects.flatMap(({ stream }: { stream: StreamId }) => {
    const project = foldProject(facts, stream, store.now())
    return (project?.grants ?? []).flatMap((grant) =>
      grant.person === person
        ? [
            {
              project: stream,
              fact: grant.fact.id,
              role: grant.role,
              approve: grant.approve,
              from: grant.from,
              to: grant.to,
            },
          ]
        : [],
    )
  })
}
