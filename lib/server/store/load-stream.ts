import { and, asc, eq, inArray } from 'drizzle-orm'
import { schema } from '@/db/client'
import { type FactId, PersonId, type Receipt, type Sha256, type StreamId } from '@/lib/domain/facts/fact'
import type { Fact } from '@/lib/domain/facts/fact-kinds'
import { Moment } from '@/lib/domain/time'
import { factOfBytes } from '@/lib/evidence/fact-of-bytes'
import { sha256Of } from '@/lib/evidence/sha256'
import type { Store, TenantId } from './store'

/** Facts as stored, with receipt and digest by fact id. */
export type LoadedFacts = { facts: Fact[]; receipts: Map<FactId, Receipt>; sha256Of: Map<FactId, Sha256> }

/** Stored bytes that no longer give their digest: somebody changed the database. */
export class StoredFactBroken extends Error {
  readonly code = 'stored-fact-broken'
  constructor(
    readonly stream: string,
    readonly position: number,
  ) {
    super(`The stored fact ${position} of ${stream} does not match its digest`)
    this.name = 'StoredFactBroken'
  }
}

/** Load a stream in the order of its positions. @throws StoredFactBroken */
export function loadStream(store: Store, tenant: TenantId, stream: StreamId): Promise<LoadedFacts> {
  return loadStreams(store, tenant, [stream])
}

/** Load several streams, ordered by stream and position. @throws StoredFactBroken */
export async function loadStreams(store: Store, tenant: TenantId, streams: readonly StreamId[]): Promise<LoadedFacts> {
  const loaded: LoadedFacts = { facts: [], receipts: new Map(), sha256Of: new Map() }
  if (streams.length === 0) return loaded
  const { facts } = schema
  const rows = await store.db.queries
    .select({
      stream: facts.stream,
      position: facts.position,
      bytes: facts.bytes,
      sha256: facts.sha256,
      receivedAt: facts.receivedAt,
      receivedBy: facts.receivedBy,
    })
    .from(facts)
    .where(and(eq(facts.tenant, tenant), inArray(facts.stream, [...new Set(streams)])))
    .orderBy(asc(facts.stream), asc(facts.position))
  for (const row of rows) {
    const { fact, sha256 } = parseRow(row)
    loaded.facts.push(fact)
    loaded.receipts.set(fact.id, {
      receivedAt: Moment.parse(row.receivedAt),
      receivedBy: PersonId.parse(row.receivedBy),
      position: row.position,
    })
    loaded.sha256Of.set(fact.id, sha256)
  }
  return loaded
}

/** Parsed facts by digest: facts never change, and one is read again with every page. */
const parsed = new Map<Sha256, Fact>()
const PARSED_AT_MOST = 20_000

/** The fact of a stored row, its digest checked. @throws StoredFactBroken */
export function parseRow(row: { stream: string; position: number; bytes: Buffer; sha256: string }): {
  fact: Fact
  sha256: Sha256
} {
  const sha256 = sha256Of(row.bytes)
  if (sha256 !== row.sha256) throw new StoredFactBroken(row.stream, row.position)
  const known = parsed.get(sha256)
  if (known) return { fact: known, sha256 }
  const fact = factOfBytes(row.bytes)
  if (fact.stream !== row.stream) throw new StoredFactBroken(row.stream, row.position)
  if (parsed.size >= PARSED_AT_MOST) parsed.clear()
  parsed.set(sha256, fact)
  return { fact, sha256 }
}
