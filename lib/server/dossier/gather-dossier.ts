import type { Receipt, StreamId } from '@/lib/domain/facts/fact'
import { foldRepair } from '@/lib/domain/fold/fold-repair'
import { instantOf, type Moment, momentOf } from '@/lib/domain/time'
import type { DossierHead, DossierInput } from '@/lib/dossier/dossier-input'
import type { DossierSeal } from '@/lib/dossier/dossier-seal'
import { streamsOfRepair } from '@/lib/server/store/load-repair-facts'
import { loadStreams } from '@/lib/server/store/load-stream'
import { likenessOfRepair } from '@/lib/server/store/photo-likeness'
import type { Store, TenantId } from '@/lib/server/store/store'
import { loadTenant, type Tenant } from '@/lib/server/store/tenants'
import { loadDrawings } from './load-drawings'

/** A dossier's input as the store has it, with the heads of every stream that was read and what the fold was told beside the facts. */
export type GatheredDossier = {
  input: DossierInput
  heads: { stream: StreamId; length: number }[]
  likeness: DossierSeal['likeness']
  holder: Tenant
}

/**
 * Gather what a repair's dossier is made from, folded at a moment written in the repair's own offset; with `until` from what was received by then alone. Null when the repair or
 * the tenant is not there. @throws StoredFactBroken
 */
export async function gatherDossier(
  store: Store,
  tenant: TenantId,
  repair: StreamId,
  head: DossierHead,
  at: Moment,
  until?: Moment,
): Promise<GatheredDossier | null> {
  const holder = await loadTenant(store, tenant)
  const streams = [...(await streamsOfRepair(store, tenant, repair)).keys()].sort()
  const { facts: stored, receipts, sha256Of } = await loadStreams(store, tenant, streams)
  const facts = until === undefined ? stored : stored.filter((fact) => isReceived(receipts.get(fact.id), until))
  const opened = facts.find((fact) => fact.stream === repair && fact.kind === 'repair-opened')
  if (!holder || !opened || instantOf(opened.observedAt) > instantOf(at)) return null
  const likeness = await likenessOfRepair(store, tenant, repair)
  const asOf = momentOf(instantOf(at), opened.observedAt.slice(-6))
  const state = foldRepair(facts, repair, asOf, {
    receipts: Object.fromEntries(receipts),
    likeness,
    sha256Of: (fact) => sha256Of.get(fact),
  })
  return {
    input: {
      state,
      facts: facts.filter((fact) => instantOf(fact.observedAt) <= instantOf(asOf)),
      receipts,
      sha256Of,
      drawings: await loadDrawings(store, facts),
      head,
      organisation: holder.name,
      isDemo: holder.isDemo,
    },
    heads: streams.map((stream) => ({ stream, length: facts.filter((fact) => fact.stream === stream).length })),
    likeness,
    holder,
  }
}

function isReceived(receipt: Receipt | undefined, until: Moment): boolean {
  return receipt !== undefined && instantOf(receipt.receivedAt) <= instantOf(until)
}
