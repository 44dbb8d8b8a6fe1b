import { eq } from 'drizzle-orm'
import { accountPersons } from '@/db/schema'
import type { PersonId } from '@/lib/domain/facts/fact'
import { type ProjectState, rolesOn } from '@/lib/domain/fold/fold-project'
import type { Role } from '@/lib/domain/roles'
import { loadNames, type ReadingDesk } from './reading-desk'

/** `approves`: an inspector with the right to approve. */
export type PersonChoice = { person: PersonId; name: string; roles: Role[]; hasAccount: boolean; approves: boolean }

/** Persons with a role in a project today, by name, and whether they sign with an account of their own. */
export async function loadPersonChoices(
  { desk, actor }: Pick<ReadingDesk, 'desk' | 'actor'>,
  project: ProjectState | null,
): Promise<PersonChoice[]> {
  if (!project) return []
  const names = await loadNames(desk)
  const tied = await desk.store.db.queries
    .select({ person: accountPersons.personId })
    .from(accountPersons)
    .where(eq(accountPersons.tenant, actor.tenant))
  const withAccount = new Set(tied.map((one) => one.person))
  const persons = [...new Set(project.grants.map((grant) => grant.person))]
  return persons
    .map((person: PersonId) => {
      const { roles, approve } = rolesOn(project, person, desk.today(project.opened.body.utcOffset))
      return { person, name: names[person] ?? person, roles, hasAccount: withAccount.has(person), approves: approve }
    })
    .filter((one) => one.roles.some((role) => role !== 'administrator' && role !== 'auditor'))
    .sort((a, b) => a.name.localeCompare(b.name))
}
