import { and, eq, or, sql } from 'drizzle-orm'
import { schema } from '@/db/client'
import type { FactId, StreamId } from '@/lib/domain/facts/fact'
import { PointNo } from '@/lib/domain/specification'
import { type Look, likeness, NEAR_ALIKE_BITS } from '@/lib/photo/likeness'
import { bitsOf } from './insert-looks'
import type { Store, TenantId } from './store'

export type AlikePhoto = {
  photo: FactId
  other: { repair: StreamId; fact: FactId; point: PointNo }
  kind: 'exact copy' | 'near copy'
}

type Pair = {
  photo: string | null
  a_sha: string
  a_d: string
  a_p: string
  repair: string
  fact: string
  point: string
  b_sha: string
  b_d: string
  b_p: string
}

/** For every photo of a repair: the photos of the tenant, in any repair, that are the same file or look alike, oldest first. A person judges them. */
export async function likenessOfRepair(store: Store, tenant: TenantId, repair: StreamId): Promise<AlikePhoto[]> {
  const answer = await store.db.queries.execute<Pair>(sql`
    select a.fact as photo, a.sha256 as a_sha, a.d_hash as a_d, a.p_hash as a_p, b.repair, b.fact, b.point, b.sha256 as b_sha, b.d_hash as b_d, b.p_hash as b_p
    from photos a join photos b on b.tenant = a.tenant and b.fact <> a.fact
      and (b.sha256 = a.sha256 or bit_count((a.d_hash_bits # b.d_hash_bits)::bit(64)) <= ${NEAR_ALIKE_BITS.dHash})
    where a.tenant = ${tenant} and a.repair = ${repair} order by a.fact, b.fact`)
  return answer.rows.flatMap(alikeOf)
}

/** Photos of the tenant that are the same file as one about to be attached, or look alike. */
export async function likenessOf(store: Store, tenant: TenantId, look: Look): Promise<Omit<AlikePhoto, 'photo'>[]> {
  const answer = await store.db.queries.execute<Pair>(sql`
    select null as photo, ${look.sha256}::text as a_sha, ${look.dHash}::text as a_d, ${look.pHash}::text as a_p, b.repair, b.fact, b.point, b.sha256 as b_sha, b.d_hash as b_d, b.p_hash as b_p
    from photos b where b.tenant = ${tenant}
      and (b.sha256 = ${look.sha256} or bit_count((${bitsOf(look.dHash).toString()}::bigint # b.d_hash_bits)::bit(64)) <= ${NEAR_ALIKE_BITS.dHash})
    order by b.fact`)
  return answer.rows.flatMap(alikeOf).map(({ other, kind }) => ({ other, kind }))
}

function alikeOf(pair: Pair): AlikePhoto[] {
  const kind = likeness(
    { sha256: pair.a_sha, dHash: pair.a_d, pHash: pair.a_p },
    { sha256: pair.b_sha, dHash: pair.b_d, pHash: pair.b_p },
  )
  if (!kind) return []
  const other = { repair: pair.repair as StreamId, fact: pair.fact as FactId, point: PointNo.parse(pair.point) }
  return [{ photo: (pair.photo ?? '') as FactId, other, kind: `${kind} copy` }]
}

/** The photos of a tenant whose original, rendition or thumbnail is this object: where it may be shown from. Empty when it is no photo of the tenant. */
export async function photosOfObject(
  store: Store,
  tenant: TenantId,
  sha256: string,
): Promise<{ repair: StreamId; fact: FactId; point: string; attempt: number }[]> {
  const { photos } = schema
  const rows = await store.db.queries
    .select({ repair: photos.repair, fact: photos.fact, point: photos.point, attempt: photos.attempt })
    .from(photos)
    .where(
      and(
        eq(photos.tenant, tenant),
        or(eq(photos.sha256, sha256), eq(photos.renditionSha256, sha256), eq(photos.thumbSha256, sha256)),
      ),
    )
    .orderBy(photos.fact)
  return rows.map((row) => ({ ...row, repair: row.repair as StreamId, fact: row.fact as FactId }))
}
