import { nodeHash } from '@/lib/calc/merkle-tree'
import { digestOf } from './digest'
import { hashOfNodes, type TreeNode } from './tree-ranges'

/** A Merkle tree that grows leaf by leaf and keeps only its complete subtrees on the right edge. */
export type GrowingTree = {
  readonly size: number
  /** Add a leaf hash; every subtree that this completes is told, the leaf first. */
  add(leafHash: Uint8Array, onNode?: (node: TreeNode, hash: Uint8Array) => void): void
  /** Root over the leaves so far. @throws RangeError for an empty tree */
  root(): Uint8Array
}

/** Start a tree; `edge` are the hashes of the complete subtrees of the first `size` leaves, left to right. @source RFC 6962 section 2.1 */
export function growTree(size = 0, edge: readonly Uint8Array[] = []): GrowingTree {
  const stack = [...edge]
  let count = size
  return {
    get size() {
      return count
    },
    add(leafHash, onNode) {
      let [hash, level, no] = [leafHash, 0, count]
      onNode?.({ level, no }, hash)
      while (no % 2 === 1) {
        const left = stack.pop()
        if (left === undefined) throw new RangeError('Expected the complete subtrees of the tree so far')
        hash = nodeHash(left, hash, digestOf)
        level += 1
        no = (no - 1) / 2
        onNode?.({ level, no }, hash)
      }
      stack.push(hash)
      count += 1
    },
    root: () => hashOfNodes(stack),
  }
}
