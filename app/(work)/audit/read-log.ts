import { isSameBytes } from '@/lib/calc/merkle-tree'
import { done, type Result, refused } from '@/lib/domain/result'
import { parseBase64 } from '@/lib/evidence/base64'
import { parseCheckpoint, type SignedCheckpoint, verifyCheckpoint } from '@/lib/evidence/checkpoint'
import { hexDigestOf } from '@/lib/evidence/digest'
import { parseFactBytes } from '@/lib/evidence/fact-of-bytes'
import type { KeyTaken } from '@/lib/evidence/follow-keys'
import { hashOfLeaf, parseLeaf } from '@/lib/evidence/leaf'
import { isIncluded, parseProof } from '@/lib/evidence/verify-proof'
import { parseVkey, type Vkey } from '@/lib/evidence/vkey'
import type { FactInLog, LogNow } from '@/lib/server/views/audit-head-view'

/** A key that the log was found to hold, with the leaf that took it. */
export type KeyInLog = { index: number; vkey: Vkey; taken: KeyTaken }
/** The log's head and keys once they were checked. */
export type ReadLog = { head: SignedCheckpoint; keys: KeyInLog[] }
export type LogFault = { code: 'head-malformed' | 'key-not-in-log' | 'head-not-signed' | 'keys-not-linked' }

/** A fact's claim to stand in a log: exact texts of fact and leaf, its number, proof and the head's size and root in base64. */
export type FactClaim = FactInLog & { size: number; root: string }

const bytesOf = (text: string) => new TextEncoder().encode(text)

/**
 * Whether a fact stands in the tree of a head: its bytes digest to what the leaf says, and the leaf is included at its number. Names the first thing that does not hold.
 */
export function judgeFactClaim(claim: FactClaim): 'included' | 'digest-differs' | 'leaf-malformed' | 'not-included' {
  const leaf = parseLeaf(bytesOf(claim.leaf))
  const root = parseBase64(claim.root)
  const proof = parseProof(claim.proof)
  if (!leaf.ok || !root) return 'leaf-malformed'
  if (hexDigestOf(bytesOf(claim.bytes)) !== leaf.value.sha256) return 'digest-differs'
  const leafHash = hashOfLeaf(bytesOf(claim.leaf))
  const { index, size } = claim
  return proof && isIncluded({ index, size, leafHash, proof, root }) ? 'included' : 'not-included'
}

/**
 * Check what a server says of its log: every key fact stands in the tree of the head, the keys follow each other, and the last of them signed the head.
 * Refuses `head-malformed`, `key-not-in-log`, `keys-not-linked`, `head-not-signed`.
 */
export function readLog({ checkpoint, keys: claimed }: LogNow): Result<ReadLog, LogFault> {
  const head = parseCheckpoint(checkpoint.text)
  if (!head.ok) return refused({ code: 'head-malformed' })
  const root = parseBase64(checkpoint.root)
  if (checkpoint.size !== head.value.size || !root || !isSameBytes(root, head.value.root))
    return refused({ code: 'head-malformed' })
  const keys: KeyInLog[] = []
  for (const one of claimed) {
    const fact = parseFactBytes(bytesOf(one.bytes))
    if (!fact.ok || fact.value.kind !== 'log-key-taken' || fact.value.stream !== 'key:log')
      return refused({ code: 'key-not-in-log' })
    const leaf = parseLeaf(bytesOf(one.leaf))
    if (!leaf.ok || leaf.value.stream !== 'key:log' || leaf.value.position !== keys.length + 1)
      return refused({ code: 'key-not-in-log' })
    const claim = { ...one, size: checkpoint.size, root: checkpoint.root }
    if (judgeFactClaim(claim) !== 'included') return refused({ code: 'key-not-in-log' })
    const vkey = parseVkey(fact.value.body.vkey)
    if (!vkey.ok || fact.value.body.replaces !== (keys.at(-1)?.vkey.text ?? null))
      return refused({ code: 'keys-not-linked' })
    keys.push({ index: one.index, vkey: vkey.value, taken: fact.value.body })
  }
  const present = keys.at(-1)
  if (!present || !verifyCheckpoint(head.value, present.vkey)) return refused({ code: 'head-not-signed' })
  return done({ head: head.value, keys })
}
