// Stands alone: node's own hashing and RFC 6962, nothing of this project.
// node recompute-inclusion.mjs EXPORT INCLUSION: tells the root over all leaves of a log export, and the root that one inclusion proof leads to.
import { createHash } from 'node:crypto'
import { readFileSync } from 'node:fs'

const sha256 = (...parts) => parts.reduce((hash, part) => hash.update(part), createHash('sha256')).digest()
const leafOf = (bytes) => sha256(Buffer.of(0), bytes)
const nodeOf = (left, right) => sha256(Buffer.of(1), left, right)

function rootOf(leaves) {
  if (leaves.length === 1) return leaves[0]
  let split = 1
  while (split * 2 < leaves.length) split *= 2
  return nodeOf(rootOf(leaves.slice(0, split)), rootOf(leaves.slice(split)))
}

/** RFC 6962 section 2.1.1 read backwards: which side each sibling stands on follows from index and size alone. */
function rootFrom(hash, index, size, proof) {
  if (size === 1) return proof.length === 0 ? hash : null
  const sibling = proof.at(-1)
  if (sibling === undefined) return null
  let split = 1
  while (split * 2 < size) split *= 2
  const isLeft = index < split
  const below = rootFrom(hash, isLeft ? index : index - split, isLeft ? split : size - split, proof.slice(0, -1))
  if (below === null) return null
  return isLeft ? nodeOf(below, sibling) : nodeOf(sibling, below)
}

const [exported, inclusion] = process.argv.slice(2)
const lines = readFileSync(exported, 'utf8').split('\n').slice(0, -1)
const leaves = lines.slice(1, -1).filter((_, at) => at % 2 === 0)
const { index, proof } = JSON.parse(readFileSync(inclusion, 'utf8'))
const proved = rootFrom(
  leafOf(Buffer.from(leaves[index])),
  index,
  leaves.length,
  proof.map((hash) => Buffer.from(hash, 'base64')),
)
process.stdout.write(
  `${JSON.stringify({
    size: leaves.length,
    rootOfAll: rootOf(leaves.map((leaf) => leafOf(Buffer.from(leaf)))).toString('base64'),
    rootOfProof: proved?.toString('base64') ?? null,
  })}\n`,
)
