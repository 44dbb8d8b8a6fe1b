import { say } from './say'
import { seedEmpty } from './seed-if-empty'
import { withStore } from './with-store'

/** `seed-demo`: enter the demo's four repairs through the append path, into an empty store. */
export async function runSeedDemo(): Promise<void> {
  await withStore(async (store) => say(`demo seeded: organisation ${await seedEmpty(store)}`))
}
