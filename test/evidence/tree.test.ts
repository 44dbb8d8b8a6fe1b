import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { inclusionProof, treeHead } from '@/lib/calc/merkle-tree'
import { digestOf } from '@/lib/evidence/digest'
import { growTree } from '@/lib/evidence/growing-tree'
import { hashOfLeaf } from '@/lib/evidence/leaf'
import { consistencyRanges, hashOfNodes, inclusionRanges, type LeafRange, nodesOf } from '@/lib/evidence/tree-ranges'
import { isConsistent, isIncluded } from '@/lib/evidence/verify-proof'
import { runsAsked } from '@/test/runs'

const LARGEST = 40
const leaves = Array.from({ length: LARGEST }, (_, at) => hashOfLeaf(new TextEncoder().encode(`leaf ${at}`)))
const nodes = new Map<string, Uint8Array>()
const roots: Uint8Array[] = []
const whole = growTree()
for (const leaf of leaves) {
  whole.add(leaf, (node, hash) => nodes.set(`${node.level}/${node.no}`, hash))
  roots.push(whole.root())
}
const rootAt = (size: number) => roots[size - 1] ?? new Uint8Array()
const hashOf = (range: LeafRange) =>
  hashOfNodes(nodesOf(range).map(({ level, no }) => nodes.get(`${level}/${no}`) ?? new Uint8Array()))

describe('tree of complete subtrees', () => {
  test('its root at every size is the one that RFC 6962 defines', () => {
    for (let size = 1; size <= LARGEST; size += 1) {
      expect(rootAt(size)).toEqual(treeHead(leaves.slice(0, size), digestOf))
      expect(hashOf({ from: 0, to: size })).toEqual(rootAt(size))
    }
  })

  test('it goes on from its right edge as from the start', () => {
    for (let size = 1; size < LARGEST; size += 1) {
      const edge = nodesOf({ from: 0, to: size }).map((node) =>
        hashOf({ from: node.no * 2 ** node.level, to: (node.no + 1) * 2 ** node.level }),
      )
      const tree = growTree(size, edge)
      for (const leaf of leaves.slice(size)) tree.add(leaf)
      expect(tree.root()).toEqual(rootAt(LARGEST))
    }
  })

  test('every inclusion proof is the one that the definition gives, and holds', () => {
    for (let size = 1; size <= LARGEST; size += 1)
      for (let index = 0; index < size; index += 1) {
        const proof = inclusionRanges(index, size).map(hashOf)
        expect(proof).toEqual(inclusionProof(leaves.slice(0, size), index, digestOf))
        const claim = { index, size, leafHash: leaves[index] ?? new Uint8Array(), proof, root: rootAt(size) }
        expect(isIncluded(claim)).toBe(true)
      }
  })

  test('every consistency proof holds, and not with a hash less or more, or for other sizes and roots', () => {
    for (let size = 1; size <= LARGEST; size += 1)
      for (let fromSize = 1; fromSize <= size; fromSize += 1) {
        const proof = consistencyRanges(fromSize, size).map(hashOf)
        const claim = { fromSize, fromRoot: rootAt(fromSize), size, root: rootAt(size), proof }
        expect(isConsistent(claim)).toBe(true)
        expect(isConsistent({ ...claim, proof: [...proof, leaves[0] ?? new Uint8Array()] })).toBe(false)
        if (proof.length > 0) expect(isConsistent({ ...claim, proof: proof.slice(1) })).toBe(false)
        if (fromSize < size) expect(isConsistent({ ...claim, fromRoot: rootAt(size) })).toBe(false)
        if (fromSize < size) expect(isConsistent({ ...claim, root: rootAt(fromSize) })).toBe(false)
      }
    for (const [fromSize, size] of [
      [0, 1],
      [2, 1],
      [1.5, 3],
      [Number.NaN, 3],
    ] as const)
      expect(isConsistent({ fromSize, fromRoot: rootAt(1), size, root: rootAt(1), proof: [] })).toBe(false)
  })

  test('a proof with any changed byte proves nothing', () => {
    fc.assert(
      fc.property(
        fc.nat(LARGEST - 2),
        fc.nat(LARGEST - 1),
        fc.nat(),
        fc.integer({ min: 1, max: 255 }),
        (a, b, place, change) => {
          const [fromSize, size] = [Math.min(a, b) + 1, Math.max(a, b) + 1]
          fc.pre(fromSize < size)
          const proof = consistencyRanges(fromSize, size).map((range) => Uint8Array.from(hashOf(range)))
          const bytes = proof[place % proof.length]
          if (!bytes) return
          const at = place % bytes.length
          bytes[at] = (bytes[at] ?? 0) ^ change
          expect(isConsistent({ fromSize, fromRoot: rootAt(fromSize), size, root: rootAt(size), proof })).toBe(false)
        },
      ),
      { numRuns: runsAsked(200) },
    )
  })

  test('a tree too large for 32 bits is proved by division', () => {
    expect(inclusionRanges(2 ** 40, 2 ** 40 + 1)).toEqual([{ from: 0, to: 2 ** 40 }])
    expect(nodesOf({ from: 0, to: 2 ** 40 + 1 })).toEqual([
      { level: 40, no: 0 },
      { level: 0, no: 2 ** 40 },
    ])
  })
})
