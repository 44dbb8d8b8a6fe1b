import { createHash } from 'node:crypto'
import { nodeHash } from '@/lib/calc/merkle-tree'
import type { PersonId } from '@/lib/domain/facts/fact'
import type { Fact } from '@/lib/domain/facts/fact-kinds'
import type { Moment } from '@/lib/domain/time'
import { base64Of } from '@/lib/evidence/base64'
import { canonicalBytes } from '@/lib/evidence/canonical-bytes'
import { signCheckpoint } from '@/lib/evidence/checkpoint'
import { digestOf, hexDigestOf } from '@/lib/evidence/digest'
import { hashOfLeaf, leafBytes } from '@/lib/evidence/leaf'
import type { LogKey } from '@/lib/evidence/log-key'
import { consistencyRanges, inclusionRanges, type LeafRange } from '@/lib/evidence/tree-ranges'

export type Received = { fact: Fact; receivedAt: Moment; receivedBy: PersonId }
export type LoggedFact = { index: number; fact: Fact; factBytes: Uint8Array; leafBytes: Uint8Array }

/** A log kept in memory: facts in order of receipt, any root and any proof of it. */
export type LogByHand = {
  origin: string
  tenant: string
  facts: LoggedFact[]
  root(size: number): Uint8Array
  inclusion(index: number, size: number): string[]
  consistency(fromSize: number, size: number): string[]
  checkpoint(key: LogKey, size?: number): string
  export(key: LogKey): Uint8Array
}

/** Put facts into a log of their own. @param bytesOf bytes of a fact, canonical unless a test wants others */
export function logByHand(
  received: readonly Received[],
  origin: string,
  bytesOf: (fact: Fact) => Uint8Array = canonicalBytes,
): LogByHand {
  const tenant = origin.split('/')[2] ?? ''
  const lengths = new Map<string, number>()
  const facts = received.map(({ fact, receivedAt, receivedBy }, index): LoggedFact => {
    const position = (lengths.get(fact.stream) ?? 0) + 1
    lengths.set(fact.stream, position)
    const factBytes = bytesOf(fact)
    const sha256 = hexDigestOf(factBytes)
    return {
      index,
      fact,
      factBytes,
      leafBytes: leafBytes({ tenant, stream: fact.stream, position, sha256, receivedAt, receivedBy }),
    }
  })
  const hashes = facts.map((one) => hashOfLeaf(one.leafBytes))
  const known = new Map<string, Uint8Array>()
  const hashOf = ({ from, to }: LeafRange): Uint8Array => {
    const [only] = hashes.slice(from, from + 1)
    if (!only) throw new RangeError(`no leaf ${from}`)
    if (to - from === 1) return only
    const key = `${from} ${to}`
    let split = 1
    while (split * 2 < to - from) split *= 2
    const hash =
      known.get(key) ?? nodeHash(hashOf({ from, to: from + split }), hashOf({ from: from + split, to }), digestOf)
    known.set(key, hash)
    return hash
  }
  const log: LogByHand = {
    origin,
    tenant,
    facts,
    root: (size) => hashOf({ from: 0, to: size }),
    inclusion: (index, size) => inclusionRanges(index, size).map((range) => base64Of(hashOf(range))),
    consistency: (fromSize, size) => consistencyRanges(fromSize, size).map((range) => base64Of(hashOf(range))),
    checkpoint: (key, size = facts.length) => signCheckpoint({ origin, size, root: log.root(size) }, key),
    export(key) {
      const head = canonicalBytes({ v: 1, kind: 'underwrap log', origin, tenant, size: facts.length })
      const end = canonicalBytes(log.checkpoint(key))
      return linesOf([head, ...facts.flatMap((one) => [one.leafBytes, one.factBytes]), end])
    },
  }
  return log
}

/** Byte strings as lines. */
export function linesOf(lines: readonly Uint8Array[]): Uint8Array {
  return new Uint8Array(Buffer.concat(lines.flatMap((line) => [line, Buffer.from('\n')])))
}

/** SHA-256 in hex. */
export function sha256Hex(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex')
}
