import { PersonId } from '@/lib/domain/facts/fact'
import { createAccount } from '@/lib/server/auth/create-account'
import { DEMO_PASSWORD, DEMO_PEOPLE } from '@/lib/server/demo/demo-people'
import { type FactScript, inOrderOfReceipt, startScript } from '@/lib/server/demo/fact-script'
import { scriptInstrumentsAndBatches } from '@/lib/server/demo/instruments-and-batches'
import { scriptPeopleAndProject } from '@/lib/server/demo/people-and-project'
import { scriptSpecificationsAndPlans } from '@/lib/server/demo/specifications-and-plans'
import { appendFacts } from '@/lib/server/store/append-facts'
import { markAsTestStore } from '@/lib/server/store/clock'
import type { Store } from '@/lib/server/store/store'
import { makeTenant } from '@/lib/server/store/tenants'

export const E2E_TENANT = 'e2e-inspection'

/**
 * People with accounts, a project with roles, instruments, batches, specifications and plans: all that stands before the first repair.
 * @param more writes what a test needs beside it
 */
export async function prepareStore(store: Store, more: (script: FactScript) => void = () => undefined): Promise<void> {
  await markAsTestStore(store.db)
  await makeTenant(store, { id: E2E_TENANT, slug: 'e2e', name: 'Plumbline-and-Thrice Inspection' })
  const script = startScript()
  scriptPeopleAndProject(script)
  scriptSpecificationsAndPlans(script)
  scriptInstrumentsAndBatches(script)
  more(script)
  for (const { fact, receivedAt, receivedBy } of inOrderOfReceipt(script.written)) {
    if (Date.parse(receivedAt) > Date.parse(store.now())) continue
    const appended = await appendFacts(store, E2E_TENANT, [fact], { receivedBy, receivedAt })
    if (!appended.ok) throw new Error(`${fact.stream} ${fact.kind}: ${JSON.stringify(appended.error)}`)
  }
  for (const person of DEMO_PEOPLE) {
    const made = await createAccount(store.db.queries, {
      name: person.name,
      email: person.email,
      password: DEMO_PASSWORD,
      tenant: E2E_TENANT,
      personId: PersonId.parse(person.id),
    })
    if (!made.ok) throw new Error(`${person.id}: ${JSON.stringify(made.error)}`)
  }
}
