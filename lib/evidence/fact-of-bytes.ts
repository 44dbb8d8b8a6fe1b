import { type Fact, type FactFault, parseFact } from '@/lib/domain/facts/fact-kinds'
import { done, type Result, refused } from '@/lib/domain/result'
import { type CanonicalFault, parseCanonical } from './parse-canonical'

/** The fact that stored bytes say. @throws Error when they say none: stored bytes were changed or a schema forgot an old form */
export function factOfBytes(bytes: Uint8Array): Fact {
  const parsed = parseFact(JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes)))
  if (!parsed.ok)
    throw new Error(`Stored bytes are no fact: ${parsed.error.faults.map((fault) => fault.code).join(', ')}`)
  return parsed.value
}

/** The fact of bytes from outside. Refuses bytes that are not canonical JSON, and `fact-refused` with every fault when they are no fact. */
export function parseFactBytes(
  bytes: Uint8Array,
): Result<Fact, CanonicalFault | { code: 'fact-refused'; faults: FactFault[] }> {
  const value = parseCanonical(bytes)
  if (!value.ok) return value
  const fact = parseFact(value.value)
  return fact.ok ? done(fact.value) : refused(fact.error)
}
