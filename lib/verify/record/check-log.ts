import type { StreamId } from '@/lib/domain/facts/fact'
import { parseCheckpoint, type SignedCheckpoint, verifyCheckpoint } from '@/lib/evidence/checkpoint'
import { hashOfLeaf } from '@/lib/evidence/leaf'
import { parseOrigin } from '@/lib/evidence/origin'
import { isIncluded, parseProof } from '@/lib/evidence/verify-proof'
import { parseVkey } from '@/lib/evidence/vkey'
import type { Ledger } from '../ledger'
import type { Manifest } from './manifest-schema'
import type { FactLine } from './read-facts'

/** Read the checkpoint and check that it is of the manifest's log, size and key. Breaks: `checkpoint-*`. */
export function readCheckpoint(bytes: Uint8Array | null, manifest: Manifest, ledger: Ledger): SignedCheckpoint | null {
  if (!bytes) return null
  const place = 'checkpoint.txt'
  const parsed = parseCheckpoint(textOf(bytes))
  if (!parsed.ok) {
    ledger.broken('checkpoint-malformed', `${place}: ${parsed.error.at}`)
    return null
  }
  const checkpoint = parsed.value
  const origin = parseOrigin(checkpoint.origin)
  if (origin?.tenant !== manifest.tenant || origin.isDemo !== manifest.isDemo)
    ledger.broken('checkpoint-holder', `${place}: ${checkpoint.origin}`)
  if (checkpoint.size !== manifest.asOf.size)
    ledger.broken('checkpoint-size', `${place}: ${checkpoint.size}, manifest ${manifest.asOf.size}`)
  const vkey = parseVkey(manifest.vkey)
  if (!vkey.ok || !verifyCheckpoint(checkpoint, vkey.value)) ledger.broken('checkpoint-signature', place)
  return checkpoint
}

/** Text of bytes; bytes that are no text give one that no parser takes. */
export function textOf(bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes)
  } catch {
    return ''
  }
}

/**
 * Check that every fact is in the checkpoint's tree at its index, indexes rise, every leaf is the holder's, and every stream has all its positions in that order and as
 * many as the manifest states. Breaks: `not-included`, `index-order`, `leaf-holder`, `position-gap`, `stream-length`, `stream-not-listed`.
 */
export function checkInclusion(
  lines: readonly FactLine[],
  manifest: Manifest,
  checkpoint: SignedCheckpoint,
  ledger: Ledger,
): void {
  const lengths = new Map<StreamId, number>()
  const known = new Map<string, Uint8Array>()
  let last = -1
  for (const { lineNo, leaf, leafBytes, index, proof } of lines) {
    const place = `facts.jsonl, line ${lineNo}: ${leaf.stream}, position ${leaf.position}`
    if (index <= last) ledger.broken('index-order', place)
    last = index
    if (leaf.tenant !== manifest.tenant) ledger.broken('leaf-holder', place)
    const hashes = hashesOf(proof, known)
    const { size, root } = checkpoint
    if (!hashes || !isIncluded({ index, size, leafHash: hashOfLeaf(leafBytes), proof: hashes, root }))
      ledger.broken('not-included', place)
    const expected = (lengths.get(leaf.stream) ?? 0) + 1
    if (leaf.position !== expected) ledger.broken('position-gap', place)
    lengths.set(leaf.stream, Math.max(expected, leaf.position))
  }
  const listed = new Set<StreamId>()
  for (const { stream, length } of manifest.streams) {
    listed.add(stream)
    const found = lengths.get(stream) ?? 0
    if (found !== length) ledger.broken('stream-length', `${stream}: ${found} of ${length}`)
  }
  for (const stream of lengths.keys()) if (!listed.has(stream)) ledger.broken('stream-not-listed', stream)
}

/** The hashes of a proof; the upper ones are the same in most proofs and are decoded once. Null when one is none. */
function hashesOf(proof: readonly string[], known: Map<string, Uint8Array>): Uint8Array[] | null {
  const hashes: Uint8Array[] = []
  for (const text of proof) {
    const hash = known.get(text) ?? parseProof([text])?.[0]
    if (!hash) return null
    known.set(text, hash)
    hashes.push(hash)
  }
  return hashes
}
