import { and, asc, count, eq, gte, lt, lte, notInArray, type SQL, sql } from 'drizzle-orm'
import { schema } from '@/db/client'
import type { StreamId } from '@/lib/domain/facts/fact'
import type { FactKind } from '@/lib/domain/facts/fact-kinds'
import type { RecordType } from '@/lib/domain/records/record'
import { instantOf, type Moment } from '@/lib/domain/time'
import type { Store, TenantId } from './store'

/** What a search of the trail asks for; null asks for all. `hidden` streams are never found. */
export type TrailQuery = {
  /** Streams that a fact must stand in or cite: a person, a batch, an instrument, a repair. */
  about: readonly StreamId[]
  kind: FactKind | null
  recordType: RecordType | null
  from: Moment | null
  to: Moment | null
  basis: 'observed' | 'received'
  hidden: readonly StreamId[]
}

/** A stored fact with its receipt, as it lies in the database; whether its bytes give its digest is for the reader to see. */
export type TrailRow = {
  leaf: number
  id: string
  stream: string
  position: number
  kind: string
  bytes: Buffer
  sha256: string
  receivedAt: string
  receivedBy: string
}

const { facts } = schema
const COLUMNS = {
  leaf: facts.leaf,
  id: facts.id,
  stream: facts.stream,
  position: facts.position,
  kind: facts.kind,
  bytes: facts.bytes,
  sha256: facts.sha256,
  receivedAt: facts.receivedAt,
  receivedBy: facts.receivedBy,
}

/** How many facts a search finds. */
export async function countTrail(store: Store, tenant: TenantId, query: TrailQuery): Promise<number> {
  const [row] = await store.db.queries
    .select({ found: count() })
    .from(facts)
    .where(and(...conditionsOf(tenant, query)))
  return row?.found ?? 0
}

/** The facts that a search finds, in order of receipt: `limit` of them after `skip`. */
export function searchTrail(
  store: Store,
  tenant: TenantId,
  query: TrailQuery,
  { skip, limit }: { skip: number; limit: number },
): Promise<TrailRow[]> {
  return store.db.queries
    .select(COLUMNS)
    .from(facts)
    .where(and(...conditionsOf(tenant, query)))
    .orderBy(asc(facts.leaf))
    .offset(skip)
    .limit(limit)
}

/** The facts that a search finds among the first `size` leaves and from leaf `from` on, in order of receipt: at most `limit`. */
export function trailFrom(
  store: Store,
  tenant: TenantId,
  query: TrailQuery,
  { from, size, limit }: { from: number; size: number; limit: number },
): Promise<TrailRow[]> {
  return store.db.queries
    .select(COLUMNS)
    .from(facts)
    .where(and(...conditionsOf(tenant, query), gte(facts.leaf, from), lt(facts.leaf, size)))
    .orderBy(asc(facts.leaf))
    .limit(limit)
}

/** One fact by its id; null when the tenant has none, or in a hidden stream. */
export async function trailRow(
  store: Store,
  tenant: TenantId,
  id: string,
  hidden: readonly StreamId[],
): Promise<TrailRow | null> {
  const [row] = await store.db.queries
    .select(COLUMNS)
    .from(facts)
    .where(and(eq(facts.tenant, tenant), eq(facts.id, id), notHidden(hidden)))
  return row ?? null
}

function notHidden(hidden: readonly StreamId[]): SQL | undefined {
  return hidden.length > 0 ? notInArray(facts.stream, [...hidden]) : undefined
}

function conditionsOf(tenant: TenantId, query: TrailQuery): (SQL | undefined)[] {
  const { from, to, basis, kind, recordType } = query
  const received = sql`${facts.receivedAt}::timestamptz`
  return [
    eq(facts.tenant, tenant),
    notHidden(query.hidden),
    ...query.about.map(aboutOf),
    kind ? eq(facts.kind, kind) : undefined,
    // Canonical bytes: a quotation mark inside a text is escaped, so this can only be the member itself.
    recordType ? sql`position(convert_to(${`"type":"${recordType}"`}, 'UTF8') in ${facts.bytes}) > 0` : undefined,
    from
      ? basis === 'received'
        ? sql`${received} >= ${new Date(instantOf(from)).toISOString()}::timestamptz`
        : gte(facts.observedAt, new Date(instantOf(from)))
      : undefined,
    to
      ? basis === 'received'
        ? sql`${received} <= ${new Date(instantOf(to)).toISOString()}::timestamptz`
        : lte(facts.observedAt, new Date(instantOf(to)))
      : undefined,
  ]
}

/** Facts in the stream or citing it; for a person also what their session sent. */
function aboutOf(stream: StreamId): SQL {
  const { factCites } = schema
  const sent = stream.startsWith('person:') ? sql` or ${facts.receivedBy} = ${stream.slice('person:'.length)}` : sql``
  return sql`(${facts.stream} = ${stream}${sent} or exists (select 1 from ${factCites}
    where ${factCites.tenant} = ${facts.tenant} and ${factCites.factId} = ${facts.id} and ${factCites.toStream} = ${stream}))`
}
