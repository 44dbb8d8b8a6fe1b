import type { Fact } from '@/lib/domain/facts/fact-kinds'
import type { OpenStore } from '@/lib/server/store/open-store'
import type { Store } from '@/lib/server/store/store'
import { listTenants, type Tenant } from '@/lib/server/store/tenants'
import { checkHeads, headOfIssue, type KeyFrom, loadSignedHeads, type ToldHead } from './check-checkpoints'
import { checkFacts } from './check-facts'
import { checkLogKey } from './check-keys'
import { checkLooks } from './check-looks'
import { checkObjects, noteUnused } from './check-objects'
import { checkRepairs } from './check-repairs'
import { checkTree } from './check-tree'
import { type CitedObject, objectsOf } from './objects-of'
import { startTally, type Tally } from './tally'
import { withSnapshot } from './with-snapshot'

/** What the objects of the photo store are checked against. */
type Cited = { objects: Map<string, CitedObject>; disposed: Set<string> }

/**
 * Check everything that a store keeps and change nothing: facts, log, checkpoints, keys, projections, photos and issued dossiers. The database is read as it stood
 * at one instant, so that a running server does not matter. Each break is told as one line when it is found.
 */
export async function checkStore(
  store: OpenStore,
  tell: (line: string) => void,
): Promise<{ checkedCount: number; brokenCount: number }> {
  const tally = startTally(tell)
  const cited: Cited = { objects: new Map(), disposed: new Set() }
  await withSnapshot(store, async (snapshot) => {
    for (const tenant of await listTenants(snapshot)) await checkTenant(snapshot, tenant, tally, cited)
  })
  await checkObjects(store.photos, cited.objects, cited.disposed, tally)
  await noteUnused(store.photos, new Set(cited.objects.keys()), tally)
  return tally
}

async function checkTenant(store: Store, { id: tenant }: Tenant, tally: Tally, cited: Cited): Promise<void> {
  const heads: ToldHead[] = await loadSignedHeads(store, tenant)
  const keys: KeyFrom[] = []
  const looks = checkLooks(store, tenant, tally)
  await checkFacts(store, tenant, tally, async (sound) => {
    for (const { row, fact } of sound) {
      cite(fact, cited)
      heads.push(...headOfIssue(fact))
      if (fact.kind === 'log-key-taken') keys.push({ vkey: fact.body.vkey, fromSize: row.leaf + 1 })
    }
    await looks.onFacts(sound.map((one) => one.fact))
  })
  await looks.end()
  const roots = await checkTree(store, tenant, tally, new Set(heads.map((head) => head.size)))
  checkHeads(tally, heads, roots, keys)
  const present = keys.at(-1)
  if (present) await checkLogKey(store.dataDir, tenant, present.vkey, tally)
  await checkRepairs(store, tenant, tally)
}

function cite(fact: Fact, { objects, disposed }: Cited): void {
  for (const object of objectsOf(fact)) {
    const known = objects.get(object.sha256)
    if (!known || (object.mustBeStored && !known.mustBeStored)) objects.set(object.sha256, object)
  }
  if (fact.kind === 'disposed') disposed.add(fact.body.sha256)
}
