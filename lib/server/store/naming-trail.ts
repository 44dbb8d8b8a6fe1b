import { and, asc, eq, inArray, notInArray, or, sql } from 'drizzle-orm'
import { schema } from '@/db/client'
import type { FactId, StreamId } from '@/lib/domain/facts/fact'
import { parseRow } from './load-stream'
import type { TrailRow } from './search-trail'
import type { Store, TenantId } from './store'

const NAMING_AT_MOST = 200

/** Who names a fact: at most 200 facts, in order of receipt. */
export type NamingFact = Pick<TrailRow, 'leaf' | 'id' | 'stream' | 'kind'>

/** Facts that name another by its id: those of its own stream, and those of streams that cite it. Hidden streams are left out. */
export function factsNaming(
  store: Store,
  tenant: TenantId,
  fact: { id: string; stream: string },
  hidden: readonly StreamId[],
): Promise<NamingFact[]> {
  const { facts, factCites } = schema
  const { leaf, id, stream, kind } = facts
  return store.db.queries
    .select({ leaf, id, stream, kind })
    .from(facts)
    .where(
      and(
        eq(facts.tenant, tenant),
        or(
          eq(stream, fact.stream),
          sql`exists (select 1 from ${factCites} where ${factCites.tenant} = ${facts.tenant} and ${factCites.factId} = ${id} and ${factCites.toStream} = ${fact.stream})`,
        ),
        sql`${id} <> ${fact.id}::uuid`,
        sql`position(convert_to(${fact.id}, 'UTF8') in ${facts.bytes}) > 0`,
        hidden.length > 0 ? notInArray(stream, [...hidden]) : undefined,
      ),
    )
    .orderBy(asc(leaf))
    .limit(NAMING_AT_MOST)
}

/** Those of some ids that are facts of the tenant outside hidden streams, in order of receipt. */
export async function factsOfIds(
  store: Store,
  tenant: TenantId,
  ids: readonly FactId[],
  hidden: readonly StreamId[],
): Promise<NamingFact[]> {
  if (ids.length === 0) return []
  const { facts } = schema
  const { leaf, id, stream, kind } = facts
  return store.db.queries
    .select({ leaf, id, stream, kind })
    .from(facts)
    .where(
      and(
        eq(facts.tenant, tenant),
        inArray(id, [...ids]),
        hidden.length > 0 ? notInArray(stream, [...hidden]) : undefined,
      ),
    )
    .orderBy(asc(leaf))
    .limit(NAMING_AT_MOST)
}

/** Checks of a device's clock, oldest first. @throws StoredFactBroken */
export async function clockChecksOf(store: Store, tenant: TenantId, device: string) {
  const { facts } = schema
  const rows = await store.db.queries
    .select()
    .from(facts)
    .where(and(eq(facts.tenant, tenant), eq(facts.stream, `device:${device}`), eq(facts.kind, 'clock-checked')))
    .orderBy(asc(facts.observedAt))
  return rows.map((row) => parseRow(row).fact)
}
