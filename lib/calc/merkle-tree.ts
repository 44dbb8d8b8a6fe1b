import { type Refusal, refuse } from '@/lib/calc/refusal'

/** SHA-256, handed in by the caller: 32 bytes out. */
export type Sha256 = (bytes: Uint8Array) => Uint8Array

export const DIGEST_BYTES = 32
const LEAF_TAG = 0x00
const NODE_TAG = 0x01

function tagged(tag: number, ...parts: readonly Uint8Array[]): Uint8Array {
  const bytes = new Uint8Array(1 + parts.reduce((size, part) => size + part.length, 0))
  bytes[0] = tag
  let at = 1
  for (const part of parts) {
    bytes.set(part, at)
    at += part.length
  }
  return bytes
}

/** Leaf digest SHA-256(00 || data). @source RFC 6962 section 2.1. Confidence high. */
export function leafHash(data: Uint8Array, sha256: Sha256): Uint8Array {
  return sha256(tagged(LEAF_TAG, data))
}

/** Node digest SHA-256(01 || left || right). @source RFC 6962 section 2.1. Confidence high. */
export function nodeHash(left: Uint8Array, right: Uint8Array, sha256: Sha256): Uint8Array {
  return sha256(tagged(NODE_TAG, left, right))
}

/** Largest power of two below `size`, for a size of 2 or more. */
function splitPoint(size: number): number {
  let split = 1
  while (split * 2 < size) split *= 2
  return split
}

/** Head of the tree over leaf digests; SHA-256 of nothing for no leaves. @source RFC 6962 section 2.1. Confidence high. */
export function treeHead(leaves: readonly Uint8Array[], sha256: Sha256): Uint8Array {
  const [only] = leaves
  if (only === undefined) return sha256(new Uint8Array(0))
  if (leaves.length === 1) return only
  const split = splitPoint(leaves.length)
  return nodeHash(treeHead(leaves.slice(0, split), sha256), treeHead(leaves.slice(split), sha256), sha256)
}

function proofPath(leaves: readonly Uint8Array[], index: number, sha256: Sha256): Uint8Array[] {
  if (leaves.length <= 1) return []
  const split = splitPoint(leaves.length)
  const [left, right] = [leaves.slice(0, split), leaves.slice(split)]
  return index < split
    ? [...proofPath(left, index, sha256), treeHead(right, sha256)]
    : [...proofPath(right, index - split, sha256), treeHead(left, sha256)]
}

/**
 * Inclusion proof of the leaf at `index` (from 0), siblings from the leaf upwards. Refuses `index_out_of_range`.
 * @source RFC 6962 section 2.1.1, RFC 9162. Confidence high.
 */
export function inclusionProof(
  leaves: readonly Uint8Array[],
  index: number,
  sha256: Sha256,
): readonly Uint8Array[] | Refusal {
  if (!Number.isInteger(index) || index < 0 || index >= leaves.length) return refuse('index_out_of_range')
  return proofPath(leaves, index, sha256)
}

/** Whether two byte strings are equal. */
export function isSameBytes(a: Uint8Array, b: Uint8Array): boolean {
  return a.length === b.length && a.every((byte, at) => byte === b[at])
}

/** What an inclusion check is given: every part comes from outside and is hostile until checked. */
export interface InclusionClaim {
  readonly index: number
  readonly size: number
  readonly leaf: Uint8Array
  readonly proof: readonly Uint8Array[]
  readonly head: Uint8Array
}

/**
 * Whether a proof shows that `leaf` stands at `index` in the tree of `size` leaves with that head; a proof too short or too long
 * and an index outside the tree do not. Refuses `digest_length` when a digest is not 32 bytes.
 * @source RFC 9162 section 2.1.3.2. Confidence high.
 */
export function verifyInclusion({ index, size, leaf, proof, head }: InclusionClaim, sha256: Sha256): boolean | Refusal {
  if ([leaf, head, ...proof].some((digest) => digest.length !== DIGEST_BYTES)) return refuse('digest_length')
  if (!Number.isSafeInteger(index) || !Number.isSafeInteger(size) || index < 0 || index >= size) return false
  // Division, not shifts: a log may hold more than 2^31 leaves.
  let [node, lastNode, current] = [index, size - 1, leaf]
  for (const sibling of proof) {
    if (lastNode === 0) return false
    if (node % 2 === 1 || node === lastNode) {
      current = nodeHash(sibling, current, sha256)
      while (node % 2 === 0 && node !== 0) {
        node /= 2
        lastNode = Math.floor(lastNode / 2)
      }
    } else {
      current = nodeHash(current, sibling, sha256)
    }
    node = Math.floor(node / 2)
    lastNode = Math.floor(lastNode / 2)
  }
  return lastNode === 0 && isSameBytes(current, head)
}
