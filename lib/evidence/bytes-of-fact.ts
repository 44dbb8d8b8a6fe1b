import type { Sha256 } from '@/lib/domain/facts/fact'
import type { Fact } from '@/lib/domain/facts/fact-kinds'
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
