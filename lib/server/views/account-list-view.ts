import { eq } from 'drizzle-orm'
import { user } from '@/db/auth-schema'
import { accountPersons } from '@/db/schema'
import type { PersonId, StreamId } from '@/lib/domain/facts/fact'
import { loadPersonRows } from './person-list-view'
import type { ReadingDesk } from './reading-desk'

export type AccountRow = {
  person: PersonId
  stream: StreamId
  name: string
  party: string
  roles: string[]
  email: string | null
  leftOn: string | null
}

/** Every person of the tenant with the address of their account; null where there is none. Only for administrators. */
export async function loadAccountRows(reading: ReadingDesk): Promise<AccountRow[]> {
  const { desk, actor } = reading
  const ties = await desk.store.db.queries
    .select({ person: accountPersons.personId, email: user.email })
    .from(accountPersons)
    .innerJoin(user, eq(user.id, accountPersons.userId))
    .where(eq(accountPersons.tenant, actor.tenant))
  const emails = new Map(ties.map((one) => [one.person, one.email]))
  return (await loadPersonRows(reading)).map(({ id, stream, name, party, roles, leftOn }) => ({
    person: id,
    stream,
    name,
    party,
    roles,
    leftOn,
    email: emails.get(id) ?? null,
  }))
}
