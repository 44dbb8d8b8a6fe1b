import { isSameBytes } from '@/lib/calc/merkle-tree'
import { type CheckpointFault, parseCheckpoint, verifyCheckpoint } from '@/lib/evidence/checkpoint'
import { followKeys } from '@/lib/evidence/follow-keys'
import { isConsistent, parseProof } from '@/lib/evidence/verify-proof'
import type { KeyInLog, ReadLog } from './read-log'

/** How an earlier checkpoint stands to the log as it is now. Only `contained` and `same` are good. */
export type Comparison =
  | { code: 'contained'; fromSize: number; size: number; keyId: string }
  | { code: 'same'; size: number; keyId: string }
  | { code: 'malformed'; at: CheckpointFault['at'] }
  | { code: 'other-log'; theirs: string; ours: string }
  | { code: 'not-ours' }
  | { code: 'key-out-of-turn'; keyId: string; rightKeyId: string }
  | { code: 'set-back'; fromSize: number; size: number }
  | { code: 'fork-same-size'; size: number }
  | { code: 'fork'; fromSize: number; size: number }
  | { code: 'no-proof' }
  | { code: 'held-key-unknown' }
  | { code: 'held-key-ends'; brokenAt: number | null }

/** The size that a checkpoint claims, for the question to the server; null when it has not the form. */
export function sizeOfCheckpoint(text: string): number | null {
  const parsed = parseCheckpoint(text)
  return parsed.ok ? parsed.value.size : null
}

/**
 * Compare a checkpoint that somebody kept with the log as it is now. The log was read and found signed; `proof` is what the server sent for the earlier size, null for none.
 * With a key that the reader holds, trust must lead from it to the log's present key by endorsements, and the earlier checkpoint must be signed by a key on that way.
 */
export function compareCheckpoints(
  text: string,
  { head, keys }: ReadLog,
  proof: readonly string[] | null,
  heldKey: string | null,
): Comparison {
  const parsed = parseCheckpoint(text)
  if (!parsed.ok) return { code: 'malformed', at: parsed.error.at }
  const earlier = parsed.value
  if (earlier.origin !== head.origin) return { code: 'other-log', theirs: earlier.origin, ours: head.origin }
  const held = heldKey === null ? keys.map((one) => one.vkey.text) : trustedFrom(heldKey, keys)
  if (!Array.isArray(held)) return held
  const signer = keys.find((one) => held.includes(one.vkey.text) && verifyCheckpoint(earlier, one.vkey))
  if (!signer) return { code: 'not-ours' }
  const { keyId } = signer.vkey
  const [fromSize, size] = [earlier.size, head.size]
  if (fromSize > size) return { code: 'set-back', fromSize, size }
  const right = keys.findLast((one) => one.index < fromSize)
  if (right?.vkey.text !== signer.vkey.text)
    return { code: 'key-out-of-turn', keyId, rightKeyId: right?.vkey.keyId ?? 'none' }
  if (fromSize === size)
    return isSameBytes(earlier.root, head.root) ? { code: 'same', size, keyId } : { code: 'fork-same-size', size }
  const hashes = proof ? parseProof(proof) : null
  if (!hashes) return { code: 'no-proof' }
  return isConsistent({ fromSize, fromRoot: earlier.root, size, root: head.root, proof: hashes })
    ? { code: 'contained', fromSize, size, keyId }
    : { code: 'fork', fromSize, size }
}

function trustedFrom(heldKey: string, keys: readonly KeyInLog[]): string[] | Comparison {
  const followed = followKeys(
    keys.map((one) => one.taken),
    heldKey,
  )
  if (followed.trusted.length === 0) return { code: 'held-key-unknown' }
  if (!followed.reachesPresent) return { code: 'held-key-ends', brokenAt: followed.brokenAt }
  return followed.trusted.map((one) => one.text)
}
