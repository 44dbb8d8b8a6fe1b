import { schema } from '@/db/client'
import type { Fact, FactOf } from '@/lib/domain/facts/fact-kinds'
import type { Transaction } from './heads'
import type { TenantId } from './store'

/** Keep the looks of attached photos and the files of issued dossiers where they can be searched. Needs no fold. */
export async function insertLooks(tx: Transaction, tenant: TenantId, facts: readonly Fact[]): Promise<void> {
  for (const fact of facts) {
    if (fact.kind === 'photo-attached') await tx.insert(schema.photos).values(photoRow(tenant, fact))
    else if (fact.kind === 'dossier-issued') await tx.insert(schema.issues).values(issueRow(tenant, fact))
  }
}

/** What is kept of an attached photo. */
export function photoRow(tenant: TenantId, fact: FactOf<'photo-attached'>) {
  const { photo, point, attempt } = fact.body
  const { dHash, pHash } = photo.measures
  return {
    tenant,
    fact: fact.id,
    repair: fact.stream,
    point,
    attempt,
    sha256: photo.sha256,
    dHash,
    pHash,
    dHashBits: bitsOf(dHash),
    renditionSha256: photo.rendition.sha256,
    thumbSha256: photo.thumb.sha256,
  }
}

/** What is kept of an issued dossier. */
export function issueRow(tenant: TenantId, fact: FactOf<'dossier-issued'>) {
  const { repair, revision, sha256, sizeBytes } = fact.body
  return { tenant, fact: fact.id, repair, revision, sha256, sizeBytes, issuedAt: fact.observedAt }
}

/** The 64 bits of 16 hex digits as PostgreSQL's signed bigint. */
export function bitsOf(hex: string): bigint {
  return BigInt.asIntN(64, BigInt(`0x${hex}`))
}
