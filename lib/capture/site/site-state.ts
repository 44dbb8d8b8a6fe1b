import type { OutboxEntry } from '@/lib/capture/outbox/outbox-entry'
import { type CaptureGround, captureGround, captureStores, namesIn } from '@/lib/domain/capture/capture-ground'
import type { SitePack } from '@/lib/domain/capture/site-pack'
import type { FactId, PersonId } from '@/lib/domain/facts/fact'
import type { Fact } from '@/lib/domain/facts/fact-kinds'
import { foldRepair } from '@/lib/domain/fold/fold-repair'
import { repairGround } from '@/lib/domain/fold/repair-ground'
import type { RepairState } from '@/lib/domain/fold/repair-state'
import { instantOf, type Moment, momentOf } from '@/lib/domain/time'
import { localFacts, photosToCome } from './local-facts'

/** A pinned repair as this device knows it: what it took along, and what it captured since. */
export type SiteState = {
  state: RepairState
  names: Record<PersonId, string>
  /** Facts that are on this device alone. */
  unsent: ReadonlySet<FactId>
  asOf: Moment
}

/** Fold a pack with the entries of this device, by the same fold as the server's. */
export function stateOnSite(pack: SitePack, entries: readonly OutboxEntry[], nowMs: number): SiteState {
  const { facts, local, asOf, toCome } = factsOnSite(pack, entries, nowMs)
  const state = foldRepair(facts, pack.stream, asOf, {
    lateAfterMinutes: pack.lateAfterMinutes,
    receipts: pack.receipts,
    likeness: pack.likeness,
    photosToCome: toCome,
    sha256Of: (fact) => pack.digests[fact],
  })
  const sent = new Set(entries.filter((one) => one.state === 'sent').map((one) => one.id))
  return {
    state,
    names: namesIn(captureStores([...pack.stores, ...pack.facts], asOf)),
    unsent: new Set(local.map((fact) => fact.id).filter((id) => !sent.has(id))),
    asOf,
  }
}

/** What a point form draws on, as the server's page gives it; null when there is no such point or record. */
export function captureOnSite(
  pack: SitePack,
  entries: readonly OutboxEntry[],
  nowMs: number,
  ask: { point: string; attempt: number; correcting: string | null },
): CaptureGround | null {
  const { facts, asOf, toCome } = factsOnSite(pack, entries, nowMs)
  return captureGround(
    repairGround(facts, pack.stream, asOf, { photosToCome: toCome }),
    captureStores([...pack.stores, ...pack.facts], asOf),
    { ...ask, me: pack.person },
  )
}

function factsOnSite(pack: SitePack, entries: readonly OutboxEntry[], nowMs: number) {
  const known = new Set<string>(pack.facts.map((fact) => fact.id))
  const local: Fact[] = localFacts(
    entries.filter((one) => one.input.stream === pack.stream),
    known,
  )
  // a clock that runs behind must not hide what was taken along or captured here
  const latestMs = Math.max(nowMs, instantOf(pack.takenAt), ...local.map((fact) => instantOf(fact.observedAt)))
  return {
    facts: [...pack.facts, ...local],
    local,
    asOf: momentOf(latestMs, pack.utcOffset),
    toCome: photosToCome(entries, pack.stream, known),
  }
}
