import type { StreamId } from '@/lib/domain/facts/fact'
import type { Moment } from '@/lib/domain/time'
import { type TrailRow, trailFrom } from './search-trail'
import type { Store, TenantId } from './store'

const ROWS_AT_ONCE = 1000

/** Which records a sample is drawn from: facts `recorded` among the first `size` leaves, observed in a period. */
export type RecordedQuery = {
  size: number
  repair: StreamId | null
  from: Moment | null
  to: Moment | null
  hidden: readonly StreamId[]
}

/** Every fact `recorded` of a repair that the query takes in, in order of leaf, read in pieces. */
export async function* recordedRows(store: Store, tenant: TenantId, query: RecordedQuery): AsyncGenerator<TrailRow> {
  const { size, repair, from, to, hidden } = query
  const asked = { about: [], kind: 'recorded', recordType: null, from, to, basis: 'observed', hidden } as const
  let next = 0
  for (;;) {
    const rows = await trailFrom(
      store,
      tenant,
      { ...asked, about: repair ? [repair] : [] },
      { from: next, size, limit: ROWS_AT_ONCE },
    )
    for (const row of rows) if (repair === null || row.stream === repair) yield row
    const last = rows.at(-1)
    if (!last || rows.length < ROWS_AT_ONCE) return
    next = last.leaf + 1
  }
}
