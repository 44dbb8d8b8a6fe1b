import { consistencyRanges, inclusionRanges } from '@/lib/evidence/tree-ranges'
import { writeProof } from '@/lib/evidence/verify-proof'
import type { Store, TenantId } from '@/lib/server/store/store'
import { extendTree } from './extend-tree'
import { hashesOfRanges } from './tree-nodes'

/** An inclusion proof as dossiers write it: leaf number and hashes in base64 from the leaf upwards. */
export type InclusionProof = { index: number; proof: string[] }

/**
 * Inclusion proofs of leaves in the tree of `size` leaves, in the order asked for, with one read for all.
 * @throws RangeError for a leaf outside that tree; LogBroken `facts-missing` for a size that the log has not reached
 */
export async function inclusionProofs(
  store: Store,
  tenant: TenantId,
  leaves: readonly number[],
  size: number,
): Promise<InclusionProof[]> {
  const ranges = leaves.map((index) => inclusionRanges(index, size))
  await extendTree(store, tenant, size)
  const hashes = await hashesOfRanges(store.db.queries, tenant, ranges.flat())
  let at = 0
  return leaves.map((index, no) => {
    const count = ranges[no]?.length ?? 0
    at += count
    return { index, proof: writeProof(hashes.slice(at - count, at)) }
  })
}

/**
 * Proof that the log of `size` leaves begins with that of `fromSize`, hashes in base64; empty for equal sizes.
 * @throws RangeError unless 1 <= fromSize <= size; LogBroken `facts-missing` for a size that the log has not reached
 */
export async function consistencyProof(
  store: Store,
  tenant: TenantId,
  fromSize: number,
  size: number,
): Promise<string[]> {
  const ranges = consistencyRanges(fromSize, size)
  await extendTree(store, tenant, size)
  return writeProof(await hashesOfRanges(store.db.queries, tenant, ranges))
}
