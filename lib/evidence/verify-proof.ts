import { DIGEST_BYTES, isSameBytes, nodeHash, verifyInclusion } from '@/lib/calc/merkle-tree'
import { base64Of, parseBase64 } from './base64'
import { digestOf } from './digest'

const HASHES_AT_MOST = 128

/** A proof as JSON writes it: base64, from the leaf upwards. */
export function writeProof(hashes: readonly Uint8Array[]): string[] {
  return hashes.map(base64Of)
}

/** The hashes of a proof from outside; null when one is not 32 bytes of strict base64 or there are more than any tree needs. */
export function parseProof(proof: readonly string[]): Uint8Array[] | null {
  if (proof.length > HASHES_AT_MOST) return null
  const hashes = proof.flatMap((text) => {
    const bytes = parseBase64(text)
    return bytes?.length === DIGEST_BYTES ? [bytes] : []
  })
  return hashes.length === proof.length ? hashes : null
}

/** Whether a leaf hash stands at `index` in the tree of `size` leaves with this root. @source RFC 9162 section 2.1.3.2 */
export function isIncluded(claim: {
  index: number
  size: number
  leafHash: Uint8Array
  proof: readonly Uint8Array[]
  root: Uint8Array
}): boolean {
  const { index, size, leafHash, proof, root } = claim
  return verifyInclusion({ index, size, leaf: leafHash, proof, head: root }, digestOf) === true
}

/** Whether the tree of `size` leaves with `root` begins with that of `fromSize` leaves with `fromRoot`. @source RFC 9162 section 2.1.4.2 */
export function isConsistent(claim: {
  fromSize: number
  fromRoot: Uint8Array
  size: number
  root: Uint8Array
  proof: readonly Uint8Array[]
}): boolean {
  const { fromSize, fromRoot, size, root, proof } = claim
  if (![fromSize, size].every(Number.isSafeInteger) || fromSize < 1 || fromSize > size) return false
  if ([fromRoot, root, ...proof].some((hash) => hash.length !== DIGEST_BYTES)) return false
  if (fromSize === size) return proof.length === 0 && isSameBytes(fromRoot, root)
  const isPower = Number.isInteger(Math.log2(fromSize)) && 2 ** Math.log2(fromSize) === fromSize
  const [start, ...rest] = isPower ? [fromRoot, ...proof] : proof
  if (start === undefined) return false
  // Division, not shifts: a log may hold more than 2^31 leaves.
  let [node, lastNode] = [fromSize - 1, size - 1]
  while (node % 2 === 1) {
    node = (node - 1) / 2
    lastNode = Math.floor(lastNode / 2)
  }
  let [former, latter] = [start, start]
  for (const hash of rest) {
    if (lastNode === 0) return false
    if (node % 2 === 1 || node === lastNode) {
      former = nodeHash(hash, former, digestOf)
      latter = nodeHash(hash, latter, digestOf)
      while (node % 2 === 0 && node !== 0) {
        node /= 2
        lastNode = Math.floor(lastNode / 2)
      }
    } else latter = nodeHash(latter, hash, digestOf)
    node = Math.floor(node / 2)
    lastNode = Math.floor(lastNode / 2)
  }
  return lastNode === 0 && isSameBytes(former, fromRoot) && isSameBytes(latter, root)
}
