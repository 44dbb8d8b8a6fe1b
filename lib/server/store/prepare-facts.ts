import type { FactId, Sha256 } from '@/lib/domain/facts/fact'
import { type Fact, parseFact } from '@/lib/domain/facts/fact-kinds'
import { done, type Result, refused } from '@/lib/domain/result'
import { bytesOfFact } from '@/lib/evidence/bytes-of-fact'
import { sha256Of } from '@/lib/evidence/sha256'
import type { AppendRefusal } from './append-refusal'

/** A fact ready to be stored. */
export type Prepared = { fact: Fact; bytes: Uint8Array; sha256: Sha256 }

/** Parse a batch and give each fact its bytes and digest. Refuses `fact-refused`, naming every bad one, or `id-taken` when two of the batch share an id. */
export function prepareFacts(facts: readonly unknown[]): Result<Prepared[], AppendRefusal> {
  const refusals: Extract<AppendRefusal, { code: 'fact-refused' }>['refusals'] = []
  const byId = new Map<FactId, Prepared>()
  const taken = new Set<FactId>()
  const prepared: Prepared[] = []
  for (const [index, json] of facts.entries()) {
    const parsed = parseFact(json)
    if (!parsed.ok) {
      const id =
        typeof json === 'object' && json !== null && 'id' in json && typeof json.id === 'string' ? json.id : null
      refusals.push({ index, id, faults: parsed.error.faults })
      continue
    }
    const bytes = bytesOfFact(parsed.value)
    const one = { fact: parsed.value, bytes, sha256: sha256Of(bytes) }
    const same = byId.get(one.fact.id)
    if (same && same.sha256 !== one.sha256) taken.add(one.fact.id)
    byId.set(one.fact.id, same ?? one)
    prepared.push(one)
  }
  if (refusals.length > 0) return refused({ code: 'fact-refused', refusals })
  if (taken.size > 0) return refused({ code: 'id-taken', ids: [...taken] })
  return done(prepared)
}
