import type { StreamId } from '@/lib/domain/facts/fact'
import type { RepairState } from '@/lib/domain/fold/repair-state'
import { instantOf } from '@/lib/domain/time'
import { repairRow, rowChangesAt } from './repair-row'
import type { TenantId } from './store'

/** What the projections keep of a folded repair: its row for lists and one row a use. */
export function projectionOf(tenant: TenantId, repair: StreamId, state: RepairState) {
  const row = repairRow(state)
  const changesAtMs = rowChangesAt(state)
  return {
    values: {
      number: row.number,
      line: row.line,
      status: row.status,
      row,
      foldedAt: new Date(instantOf(state.asOf)),
      changesAt: changesAtMs === null ? null : new Date(changesAtMs),
    },
    uses: state.uses.map((use, no) => ({
      tenant,
      repair,
      no,
      point: use.point,
      attempt: use.attempt,
      fact: use.fact,
      at: use.at,
      atInstant: new Date(instantOf(use.at)),
      ofStream: use.of,
      role: use.role,
      into: use.into ?? null,
      amount: use.amount ?? null,
      isOverruled: use.overruled === true,
    })),
  }
}
