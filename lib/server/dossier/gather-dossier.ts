import type { StreamId } from '@/lib/domain/facts/fact'
import { instantOf, type Moment, momentOf } from '@/lib/domain/time'
import type { DossierHead, DossierInput } from '@/lib/dossier/dossier-input'
import { loadRepair } from '@/lib/server/store/load-repair'
import type { Store, TenantId } from '@/lib/server/store/store'
import { loadTenant } from '@/lib/server/store/tenants'

/** A dossier's input as the store has it, with the heads of every stream that was read. */
export type GatheredDossier = { input: DossierInput; heads: { stream: StreamId; length: number }[] }

/** Gather what a repair's dossier is made from, folded at a moment written in the repair's own offset. Null when the repair or the tenant is not there. */
export async function gatherDossier(
  store: Store,
  tenant: TenantId,
  repair: StreamId,
  head: DossierHead,
  at: Moment,
): Promise<GatheredDossier | null> {
  const holder = await loadTenant(store, tenant)
  const loaded = holder && (await loadRepair(store, tenant, repair, at))
  if (!holder || !loaded) return null
  const asOf = momentOf(instantOf(at), loaded.state.opened.observedAt.slice(-6))
  const { facts, receipts, sha256Of, heads } = loaded
  const seen = facts.filter((fact) => instantOf(fact.observedAt) <= instantOf(asOf))
  return {
    input: {
      state: { ...loaded.state, asOf },
      facts: seen,
      receipts,
      sha256Of,
      head,
      organisation: holder.name,
      isDemo: holder.isDemo,
    },
    heads,
  }
}
