import type { StreamId } from '@/lib/domain/facts/fact'
import type { RepairState } from '@/lib/domain/fold/repair-state'
import type { Moment } from '@/lib/domain/time'
import { loadRepair } from './load-repair'
import type { Store, TenantId } from './store'

/** A repair as it stands at a moment (the present one unless said); null when it is not there. @throws StoredFactBroken */
export async function loadRepairState(
  store: Store,
  tenant: TenantId,
  repair: StreamId,
  asOf?: Moment,
): Promise<RepairState | null> {
  return (await loadRepair(store, tenant, repair, asOf))?.state ?? null
}
