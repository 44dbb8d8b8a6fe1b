import type { Sha256 } from '@/lib/domain/facts/fact'
import { type Fact, parseFact } from '@/lib/domain/facts/fact-kinds'
import { canonicalBytes } from './canonical-bytes'
import { sha256Of } from './sha256'

/** The bytes that are kept and hashed as a fact: canonical JSON of the parsed fact. */
export function bytesOfFact(fact: Fact): Uint8Array {
  return canonicalBytes(fact)
}

/** Digest of a fact: what a signature covers and the log commits to. */
export function digestOfFact(fact: Fact): Sha256 {
  return sha256Of(bytesOfFact(fact))
}

/** The fact that stored bytes say. @throws Error when they say none: stored bytes were changed or a schema forgot an old form */
export function factOfBytes(bytes: Uint8Array): Fact {
  const parsed = parseFact(JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes)))
  if (!parsed.ok)
    throw new Error(`Stored bytes are no fact: ${parsed.error.faults.map((fault) => fault.code).join(', ')}`)
  return parsed.value
}
