import { eq, sql } from 'drizzle-orm'
import { schema } from '@/db/client'
import { type FactId, type PersonId, type Receipt, type StreamId, streamKind } from '@/lib/domain/facts/fact'
import { citesOf } from '@/lib/domain/fold/cites-of'
import { instantOf, type Moment } from '@/lib/domain/time'
import type { Transaction } from './heads'
import { insertLooks } from './insert-looks'
import type { Prepared } from './prepare-facts'
import type { TenantId } from './store'

/**
 * Write new facts behind the heads of their streams, with what they cite and the debt of every repair they touch.
 * Null when there is no such tenant.
 */
export async function insertFacts(
  tx: Transaction,
  tenant: TenantId,
  fresh: readonly Prepared[],
  heads: ReadonlyMap<StreamId, number>,
  receipt: { receivedAt: Moment; receivedBy: PersonId },
): Promise<Map<FactId, { sha256: string; receipt: Receipt }> | null> {
  const next = new Map(heads)
  const placed = fresh.map((one) => {
    const position = (next.get(one.fact.stream) ?? 0) + 1
    next.set(one.fact.stream, position)
    return { ...one, position, cites: citesOf(one.fact) }
  })
  // The counter's row is the tenant's one queue: it is taken last and held only for the inserts.
  const [counted] = await tx
    .update(schema.tenants)
    .set({ leafCount: sql`${schema.tenants.leafCount} + ${placed.length}` })
    .where(eq(schema.tenants.id, tenant))
    .returning({ after: schema.tenants.leafCount })
  if (!counted) return null
  const firstLeaf = counted.after - placed.length
  for (const some of inPieces(
    placed.map((one, index) => ({ ...one, leaf: firstLeaf + index })),
    1000,
  )) {
    await tx.insert(schema.facts).values(
      some.map(({ fact, bytes, sha256, position, leaf }) => ({
        tenant,
        stream: fact.stream,
        position,
        id: fact.id,
        leaf,
        kind: fact.kind,
        observedAt: new Date(instantOf(fact.observedAt)),
        sha256,
        bytes: Buffer.from(bytes),
        ...receipt,
      })),
    )
  }
  const cites = placed.flatMap(({ fact, cites }) =>
    cites.map((toStream) => ({ tenant, factId: fact.id, fromStream: fact.stream, toStream })),
  )
  for (const some of inPieces(cites, 2000)) await tx.insert(schema.factCites).values(some)
  await insertLooks(
    tx,
    tenant,
    placed.map((one) => one.fact),
  )
  await owe(
    tx,
    tenant,
    [...new Set(placed.map((one) => one.fact.stream))],
    placed.flatMap((one) => one.cites),
    firstLeaf + placed.length - 1,
  )
  return new Map(placed.map(({ fact, sha256, position }) => [fact.id, { sha256, receipt: { ...receipt, position } }]))
}

/** Repairs that must be folded again: those written to, those that cite a changed stream, directly or through one more, and those cited by it. */
async function owe(
  tx: Transaction,
  tenant: TenantId,
  changed: readonly StreamId[],
  cited: readonly StreamId[],
  leaf: number,
): Promise<void> {
  const own = [...new Set([...changed, ...cited])].filter((stream) => streamKind(stream) === 'repair')
  const others = changed.filter((stream) => streamKind(stream) !== 'repair')
  await tx.execute(sql`
    insert into projection_debts (tenant, repair, leaf)
    select ${tenant}, repair, ${leaf} from (
      select unnest(${sql.param(own)}::text[]) as repair
      union select a.from_stream from fact_cites a where a.tenant = ${tenant} and a.to_stream = any(${sql.param(others)}::text[]) and a.from_stream like 'repair:%'
      union select b.to_stream from fact_cites b where b.tenant = ${tenant} and b.from_stream = any(${sql.param(others)}::text[]) and b.to_stream like 'repair:%'
      union select c.from_stream from fact_cites d join fact_cites c on c.tenant = d.tenant and c.to_stream = d.from_stream
        where d.tenant = ${tenant} and d.to_stream = any(${sql.param(others)}::text[]) and d.from_stream not like 'repair:%' and d.from_stream not like 'person:%' and d.from_stream not like 'device:%' and c.from_stream like 'repair:%'
      union select e.to_stream from fact_cites f join fact_cites e on e.tenant = f.tenant and e.from_stream = f.from_stream
        where f.tenant = ${tenant} and f.to_stream = any(${sql.param(others)}::text[]) and (f.from_stream like 'nonconformance:%' or f.from_stream like 'dossier:%') and e.to_stream like 'repair:%'
    ) as touched
    on conflict (tenant, repair) do update set leaf = greatest(projection_debts.leaf, excluded.leaf)`)
}

function* inPieces<T>(list: readonly T[], size: number): Generator<T[]> {
  for (let from = 0; from < list.length; from += size) yield list.slice(from, from + size)
}
