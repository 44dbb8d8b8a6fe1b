import type { PersonId } from '@/lib/domain/facts/fact'
import type { FactOf } from '@/lib/domain/facts/fact-kinds'
import { ofKind } from '@/lib/domain/fold/order-facts'
import { loadFactsOfKind } from './load-facts'
import type { Store, TenantId } from './store'

/** The keys of persons on their devices, and the ends of such keys, in the order received. @throws StoredFactBroken */
export async function loadSigningKeys(
  store: Store,
  tenant: TenantId,
  persons: ReadonlySet<PersonId>,
): Promise<(FactOf<'signing-key-taken'> | FactOf<'signing-key-ended'>)[]> {
  const taken = ofKind(await loadFactsOfKind(store, tenant, 'signing-key-taken', 'device'), 'signing-key-taken').filter(
    (key) => persons.has(key.observedBy),
  )
  const keys = new Set(taken.map((key) => key.id))
  const ended = ofKind(await loadFactsOfKind(store, tenant, 'signing-key-ended', 'device'), 'signing-key-ended')
  return [...taken, ...ended.filter((end) => keys.has(end.body.key))]
}
