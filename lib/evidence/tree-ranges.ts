import { nodeHash } from '@/lib/calc/merkle-tree'
import { digestOf } from './digest'

/** A complete subtree: 2^level leaves, the `no`-th of its level from the left (from 0). */
export type TreeNode = { level: number; no: number }

/** Leaves from `from` up to before `to` whose hash stands in a proof or is a root. */
export type LeafRange = { from: number; to: number }

/** Largest power of two below `size`, for a size of 2 or more. */
function splitPoint(size: number): number {
  let split = 1
  while (split * 2 < size) split *= 2
  return split
}

/** Siblings of a leaf from the leaf upwards: whose hashes are its inclusion proof. @throws RangeError for an index outside the tree @source RFC 6962 section 2.1.1 */
export function inclusionRanges(index: number, size: number): LeafRange[] {
  if (!Number.isSafeInteger(index) || index < 0 || index >= size)
    throw new RangeError(`Expected a leaf of a tree of ${size}, received ${index}`)
  const ranges: LeafRange[] = []
  for (let from = 0, to = size; to - from > 1; ) {
    const middle = from + splitPoint(to - from)
    if (index < middle) {
      ranges.push({ from: middle, to })
      to = middle
    } else {
      ranges.push({ from, to: middle })
      from = middle
    }
  }
  return ranges.reverse()
}

/**
 * Ranges whose hashes prove that the tree of `size` leaves begins with that of `fromSize`; none when the sizes are equal.
 * @throws RangeError unless 1 <= fromSize <= size @source RFC 6962 section 2.1.2
 */
export function consistencyRanges(fromSize: number, size: number): LeafRange[] {
  if (!Number.isSafeInteger(fromSize) || fromSize < 1 || fromSize > size)
    throw new RangeError(`Expected a size from 1 to ${size}, received ${fromSize}`)
  const ranges: LeafRange[] = []
  let [from, to, isWhole] = [0, size, true]
  while (fromSize < to) {
    const middle = from + splitPoint(to - from)
    if (fromSize <= middle) {
      ranges.push({ from: middle, to })
      to = middle
    } else {
      ranges.push({ from, to: middle })
      from = middle
      isWhole = false
    }
  }
  if (!isWhole) ranges.push({ from, to })
  return ranges.reverse()
}

/** The complete subtrees that make up a range of a proof, left to right: their number is at most the height of the tree. */
export function nodesOf({ from, to }: LeafRange): TreeNode[] {
  const nodes: TreeNode[] = []
  for (let at = from; at < to; ) {
    let [level, leaves] = [0, 1]
    while (leaves * 2 <= to - at) {
      leaves *= 2
      level += 1
    }
    nodes.push({ level, no: at / leaves })
    at += leaves
  }
  return nodes
}

/** Hash of a range from those of its complete subtrees, left to right. @throws RangeError for none @source RFC 6962 section 2.1 */
export function hashOfNodes(hashes: readonly Uint8Array[]): Uint8Array {
  const last = hashes.at(-1)
  if (last === undefined) throw new RangeError('Expected a range of one leaf or more')
  return hashes.slice(0, -1).reduceRight((right, left) => nodeHash(left, right, digestOf), last)
}
