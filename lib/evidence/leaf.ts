import * as z from 'zod'
import { leafHash } from '@/lib/calc/merkle-tree'
import { PersonId, Sha256, StreamId } from '@/lib/domain/facts/fact'
import { done, type Result, refused } from '@/lib/domain/result'
import { Moment } from '@/lib/domain/time'
import { canonicalBytes } from './canonical-bytes'
import { digestOf } from './digest'
import { TenantName } from './origin'
import { type CanonicalFault, parseCanonical } from './parse-canonical'

const Leaf = z.strictObject({
  v: z.literal(1),
  tenant: TenantName,
  stream: StreamId,
  position: z.int().positive(),
  sha256: Sha256,
  receivedAt: Moment,
  receivedBy: PersonId,
})

/** What the log commits to for one fact received (FORMAT.md section 2). */
export type Leaf = z.infer<typeof Leaf>

/** The leaf's bytes: canonical JSON. */
export function leafBytes(leaf: Omit<Leaf, 'v'>): Uint8Array {
  const { tenant, stream, position, sha256, receivedAt, receivedBy } = leaf
  return canonicalBytes({ v: 1, tenant, stream, position, sha256, receivedAt, receivedBy })
}

/** The leaf of bytes from outside. Refuses bytes that are not canonical JSON, and `leaf-malformed` naming the members. */
export function parseLeaf(bytes: Uint8Array): Result<Leaf, CanonicalFault | { code: 'leaf-malformed'; at: string[] }> {
  const value = parseCanonical(bytes)
  if (!value.ok) return value
  const leaf = Leaf.safeParse(value.value)
  return leaf.success
    ? done(leaf.data)
    : refused({ code: 'leaf-malformed', at: leaf.error.issues.map((issue) => issue.path.join('.')) })
}

/** Leaf hash SHA-256(00 || bytes), 32 bytes. @source RFC 6962 section 2.1 */
export function hashOfLeaf(bytes: Uint8Array): Uint8Array {
  return leafHash(bytes, digestOf)
}
