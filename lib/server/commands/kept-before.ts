import type { Fact } from '@/lib/domain/facts/fact-kinds'
import { isSameJson } from '@/lib/domain/fold/apply-correction'
import { done, type Result } from '@/lib/domain/result'
import type { Kept } from './desk'

/**
 * A fact sent again after its answer was lost: same id, kind and body in the same stream. It was kept then, and is answered as it was; null when
 * there is no such fact. Whoever sends the id with another body gets `id-taken` from the store.
 */
export function keptBefore(
  fact: Pick<Fact, 'id' | 'stream' | 'kind' | 'body'>,
  facts: readonly Fact[],
): Result<Kept, never> | null {
  const known = facts.find((one) => one.id === fact.id)
  if (!known || known.kind !== fact.kind || !isSameJson(known.body, fact.body)) return null
  return done({ stream: fact.stream, length: facts.length, fact: fact.id, facts: [fact.id] })
}
