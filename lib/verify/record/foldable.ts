import type { StreamId } from '@/lib/domain/facts/fact'
import type { Fact } from '@/lib/domain/facts/fact-kinds'
import { ofKind } from '@/lib/domain/fold/order-facts'

const OWN_FACTS_AT_MOST = 8000
const EQUAL_PAIRS_AT_MOST = 100_000

/**
 * Whether a repair's facts are few enough to be folded within seconds and bounded memory: the fold compares every photo with every equal one, and a file from outside may hold
 * thousands of equal photos under its maker's own signature.
 */
export function isFoldable(facts: readonly Fact[], repair: StreamId): boolean {
  if (facts.filter((fact) => fact.stream === repair).length > OWN_FACTS_AT_MOST) return false
  const equal = new Map<string, number>()
  let pairs = 0
  for (const { body } of ofKind(facts, 'photo-attached')) {
    const before = equal.get(body.photo.sha256) ?? 0
    pairs += 2 * before
    equal.set(body.photo.sha256, before + 1)
  }
  return pairs <= EQUAL_PAIRS_AT_MOST
}
