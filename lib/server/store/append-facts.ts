import { and, eq, inArray, sql } from 'drizzle-orm'
import { schema } from '@/db/client'
import type { FactId, PersonId, Receipt, StreamId } from '@/lib/domain/facts/fact'
import { done, type Result, refused } from '@/lib/domain/result'
import type { Moment } from '@/lib/domain/time'
import type { Appended, AppendRefusal } from './append-refusal'
import { headsIn, lockStreams, type Transaction } from './heads'
import { insertFacts } from './insert-facts'
import { type Prepared, prepareFacts } from './prepare-facts'
import type { Store, TenantId } from './store'

export type AppendOptions = {
  receivedBy: PersonId
  /** Heads a decision saw: nothing is appended when one has moved. */
  expectHeads?: readonly { stream: StreamId; length: number }[]
  /** Only the demo's seed stamps receipts itself. */
  receivedAt?: Moment
}

/**
 * Append a batch of facts, all or none. A fact sent again with the same bytes gives its first receipt. Form, identity and tenant
 * refuse a fact; nothing else does. Answers in the order of the batch. Folded projections follow with the next reading of them.
 * Refuses with `fact-refused`, `id-taken`, `heads-moved` or `tenant-unknown`.
 */
export async function appendFacts(
  store: Store,
  tenant: TenantId,
  facts: readonly unknown[],
  options: AppendOptions,
): Promise<Result<Appended[], AppendRefusal>> {
  const prepared = prepareFacts(facts)
  if (!prepared.ok) return prepared
  const receivedAt = options.receivedAt ?? store.now()
  return store.db.queries.transaction((tx) => write(tx, tenant, prepared.value, { ...options, receivedAt }))
}

async function write(
  tx: Transaction,
  tenant: TenantId,
  batch: readonly Prepared[],
  options: AppendOptions & { receivedAt: Moment },
): Promise<Result<Appended[], AppendRefusal>> {
  const expected = options.expectHeads ?? []
  const streams = [...new Set<StreamId>(batch.map((one) => one.fact.stream))]
  await lockStreams(tx, tenant, [...streams, ...expected.map((one) => one.stream)])
  const known = await knownFacts(tx, tenant, batch)
  const taken = batch.filter((one) => known.has(one.fact.id) && known.get(one.fact.id)?.sha256 !== one.sha256)
  if (taken.length > 0) return refused({ code: 'id-taken', ids: [...new Set(taken.map((one) => one.fact.id))] })
  const fresh = [...new Map(batch.filter((one) => !known.has(one.fact.id)).map((one) => [one.fact.id, one])).values()]
  if (fresh.length > 0) {
    const heads = await headsIn(tx, tenant, [...streams, ...expected.map((one) => one.stream)])
    const moved = expected.flatMap(({ stream, length }) => {
      const found = heads.get(stream) ?? 0
      return found === length ? [] : [{ stream, expected: length, found }]
    })
    if (moved.length > 0) return refused({ code: 'heads-moved', streams: moved })
    const received = await insertFacts(tx, tenant, fresh, heads, {
      receivedAt: options.receivedAt,
      receivedBy: options.receivedBy,
    })
    if (!received) return refused({ code: 'tenant-unknown' })
    for (const [id, receipt] of received) known.set(id, receipt)
  }
  const newIds = new Set(fresh.map((one) => one.fact.id))
  return done(
    batch.map((one) => {
      const row = known.get(one.fact.id)
      if (!row) throw new Error('a fact of the batch was neither known nor inserted')
      return {
        id: one.fact.id,
        stream: one.fact.stream,
        sha256: one.sha256,
        receipt: row.receipt,
        isNew: newIds.has(one.fact.id),
      }
    }),
  )
}

async function knownFacts(
  tx: Transaction,
  tenant: TenantId,
  batch: readonly Prepared[],
): Promise<Map<FactId, { sha256: string; receipt: Receipt }>> {
  if (batch.length === 0) return new Map()
  const { facts } = schema
  const rows = await tx
    .select({
      id: facts.id,
      sha256: facts.sha256,
      position: facts.position,
      receivedAt: facts.receivedAt,
      receivedBy: sql<PersonId>`${facts.receivedBy}`,
    })
    .from(facts)
    .where(
      and(
        eq(facts.tenant, tenant),
        inArray(
          facts.id,
          batch.map((one) => one.fact.id),
        ),
      ),
    )
  return new Map(rows.map(({ id, sha256, ...receipt }) => [id as FactId, { sha256, receipt }]))
}
