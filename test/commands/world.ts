import { PersonId, type StreamId } from '@/lib/domain/facts/fact'
import { ROLES, type Role } from '@/lib/domain/roles'
import { type Actor, actorOf } from '@/lib/server/auth/actor'
import { createAccount } from '@/lib/server/auth/create-account'
import { loadActorOfPerson } from '@/lib/server/auth/load-actor'
import { provideStore } from '@/lib/server/runtime/runtime'
import { appendFacts } from '@/lib/server/store/append-facts'
import { makeTenant } from '@/lib/server/store/tenants'
import { type FactJson, factJson } from '@/test/store/facts-for-tests'
import { openTestStore, type TestStore } from '@/test/store/test-store'
import { EARLY, groundFacts, MORE, PERSON_OF_ROLE } from './world-facts'

export const NOW = '2026-05-12T09:00:00+01:00'
export const PASSWORD = 'a pipe that holds water'
const WITHOUT_ACCOUNT = new Set(['KP'])

export type World = {
  store: TestStore
  of(person: string): Promise<Actor>
  as(role: Role): Promise<Actor>
  foreign: Actor
  count(): Promise<number>
  put(facts: FactJson[]): Promise<void>
}

/** Open a world: tenant A with everything above and accounts, tenant B with one person who holds every role there. */
export async function openWorld(): Promise<World> {
  const store = await openTestStore({ now: NOW })
  await provideStore(store)
  await makeTenant(store, { id: 'tenant-b', slug: 'b', name: 'Somebody Else' })
  const put = async (facts: FactJson[], tenant = store.tenant) => {
    const kept = await appendFacts(store, tenant, facts, { receivedBy: PersonId.parse('QI') })
    if (!kept.ok) throw new Error(JSON.stringify(kept.error))
  }
  await put(groundFacts())
  await put(
    [factJson('person:X', 'person-registered', { name: 'Stranger', party: 'crew', title: 'Everything' }, EARLY)],
    'tenant-b',
  )
  for (const person of [...Object.values(PERSON_OF_ROLE), ...MORE.map(([one]) => one)]) {
    if (WITHOUT_ACCOUNT.has(person)) continue
    const made = await createAccount(store.db.queries, {
      name: `Person ${person}`,
      email: `${person}@example.test`,
      password: PASSWORD,
      tenant: store.tenant,
      personId: PersonId.parse(person),
    })
    if (!made.ok) throw new Error(made.error.code)
  }
  const of = async (person: string) => {
    const actor = await loadActorOfPerson(store, store.tenant, PersonId.parse(person))
    if (!actor) throw new Error(`no person ${person}`)
    return actor
  }
  const project = 'project:P-1' as StreamId
  const grants = ROLES.map((role) => ({
    project,
    fact: '019e0000-0000-7000-8000-000000000000' as never,
    role,
    approve: true,
    from: '2020-01-01',
    to: null,
  }))
  return {
    store,
    of,
    put,
    as: (role) => of(PERSON_OF_ROLE[role]),
    foreign: actorOf({ userId: 'x', tenant: 'tenant-b', person: PersonId.parse('X'), name: 'Stranger', grants }),
    async count() {
      const answer = await store.db.pool.query<{ count: string }>('select count(*) from facts where tenant = $1', [
        store.tenant,
      ])
      return Number(answer.rows[0]?.count)
    },
  }
}
