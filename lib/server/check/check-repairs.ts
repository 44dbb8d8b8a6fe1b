import { asc, eq } from 'drizzle-orm'
import { schema } from '@/db/client'
import { StreamId } from '@/lib/domain/facts/fact'
import { canonicalBytes } from '@/lib/evidence/canonical-bytes'
import { listStreams } from '@/lib/server/store/list-streams'
import { loadRepair } from '@/lib/server/store/load-repair'
import { projectionOf } from '@/lib/server/store/projection-of'
import type { RepairRow } from '@/lib/server/store/repair-row'
import type { Store, TenantId } from '@/lib/server/store/store'
import { REPROJECT, type Tally } from './tally'

const textOf = (value: unknown) => new TextDecoder().decode(canonicalBytes(JSON.parse(JSON.stringify(value))))

/**
 * Check the folded projections of a tenant: each repair is folded afresh at the moment its row stands at, and row and uses compared. A repair that is owed
 * a fold is behind, as it may be, and is skipped.
 */
export async function checkRepairs(store: Store, tenant: TenantId, tally: Tally): Promise<void> {
  const { projectionDebts, repairs, uses } = schema
  const queries = store.db.queries
  const debts = await queries.select().from(projectionDebts).where(eq(projectionDebts.tenant, tenant))
  const owed = new Set(debts.map((row) => row.repair))
  const rows = new Map(
    (await queries.select().from(repairs).where(eq(repairs.tenant, tenant))).map((row) => [row.stream, row]),
  )
  const usesOf = new Map<string, (typeof uses.$inferSelect)[]>()
  for (const use of await queries.select().from(uses).where(eq(uses.tenant, tenant)).orderBy(asc(uses.no)))
    usesOf.set(use.repair, [...(usesOf.get(use.repair) ?? []), use])
  const streams = new Set((await listStreams(store, tenant, 'repair')).map((one) => one.stream as string))
  for (const stream of streams) {
    if (owed.has(stream)) {
      tally.pass()
      continue
    }
    const place = `projection of ${stream} (${tenant})`
    const fail = (problem: string) => tally.fail({ place, problem, remedy: REPROJECT })
    const stored = rows.get(stream)
    if (!stored) {
      // A stream that holds no opening of a repair gives no row.
      const never = await loadRepair(store, tenant, StreamId.parse(stream)).catch(() => null)
      if (never) fail('its row is missing')
      else tally.pass()
      continue
    }
    const repair = StreamId.parse(stream)
    const asOf = (stored.row as Partial<RepairRow>).foldedAt
    const loaded = asOf ? await loadRepair(store, tenant, repair, asOf).catch(() => 'unreadable' as const) : null
    if (loaded === 'unreadable') fail('it cannot be folded: a fact that it reads is broken')
    else if (!loaded) fail('its row stands at a moment when the repair was not there')
    else {
      const { values, uses: expectedUses } = projectionOf(tenant, repair, loaded.state)
      const isSame =
        textOf({ tenant, stream, ...values }) === textOf(stored) &&
        textOf(expectedUses) === textOf(usesOf.get(stream) ?? [])
      if (isSame) tally.pass()
      else fail('row or uses are not what a fresh fold gives')
    }
  }
  for (const stream of new Set([...rows.keys(), ...usesOf.keys(), ...owed]))
    if (!streams.has(stream))
      tally.fail({ place: `projection of ${stream} (${tenant})`, problem: 'no fact gives it', remedy: REPROJECT })
}
