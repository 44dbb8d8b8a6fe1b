import type { PersonId, StreamId } from '@/lib/domain/facts/fact'
import { foldPerson } from '@/lib/domain/fold/fold-person'
import { registerRowOf } from '@/lib/domain/fold/register-row'
import type { RepairState, Use } from '@/lib/domain/fold/repair-state'
import type { Moment } from '@/lib/domain/time'
import type { RepairIdentity } from '@/lib/domain/trace/trace-batch'
import { listUses } from '@/lib/server/store/list-uses'
import { loadStreamsOfKind } from '@/lib/server/store/load-facts'
import { loadRepairState } from '@/lib/server/store/load-repair-state'
import type { Store, TenantId } from '@/lib/server/store/store'

/** What a trace stands on: the repairs that used the thing, folded now, their uses and who they are. */
export type TraceGround = {
  asOf: Moment
  states: ReadonlyMap<StreamId, RepairState>
  uses: Use[]
  repairs: RepairIdentity[]
  names: Record<PersonId, string>
}

/** Fold every repair that used a batch, an instrument or a person. */
export async function loadTraceGround(store: Store, tenant: TenantId, of: StreamId): Promise<TraceGround> {
  const touched = [...new Set((await listUses(store, tenant, [of])).map((use) => use.repair))].sort()
  const states = new Map<StreamId, RepairState>()
  for (const repair of touched) {
    const state = await loadRepairState(store, tenant, repair)
    if (state) states.set(repair, state)
  }
  const folded = [...states.values()]
  return {
    asOf: store.now(),
    states,
    uses: folded.flatMap((state) => state.uses),
    repairs: folded.map(identityOf),
    names: await loadTenantNames(store, tenant),
  }
}

/** Who a repair is, for a trace. */
export function identityOf(state: RepairState): RepairIdentity {
  return {
    repair: state.stream,
    number: state.number,
    line: `${state.opened.body.line} ${state.opened.body.lineTitle}`,
    status: state.status,
    registerNo: registerRowOf(state).registerNo,
  }
}

/** Names of the tenant's persons by id. */
export async function loadTenantNames(store: Store, tenant: TenantId): Promise<Record<PersonId, string>> {
  const { facts } = await loadStreamsOfKind(store, tenant, 'person')
  const names: Record<PersonId, string> = {}
  for (const stream of new Set(facts.map((fact) => fact.stream))) {
    const person = foldPerson(facts, stream, store.now())
    if (person) names[person.id] = person.name
  }
  return names
}
