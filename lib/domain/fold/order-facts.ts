import type { FactId, StreamId } from '../facts/fact'
import type { Fact, FactKind, FactOf } from '../facts/fact-kinds'
import { instantOf, type Moment } from '../time'

/**
 * The facts as a set in their one order: each id once, none observed after `asOf`, by observed instant and then by id.
 * Any permutation or repetition of the input gives the same list.
 */
export function orderFacts(facts: readonly Fact[], asOf: Moment): Fact[] {
  const until = instantOf(asOf)
  const byId = new Map<FactId, { fact: Fact; at: number }>()
  for (const fact of facts) {
    const at = instantOf(fact.observedAt)
    if (at <= until) byId.set(fact.id, { fact, at })
  }
  return [...byId.values()].sort((a, b) => a.at - b.at || (a.fact.id < b.fact.id ? -1 : 1)).map((one) => one.fact)
}

/** The facts of one kind, in the order given. */
export function ofKind<K extends FactKind>(facts: readonly Fact[], kind: K): FactOf<K>[] {
  return facts.filter((fact): fact is FactOf<K> => fact.kind === kind)
}

/** The facts of one stream, in the order given. */
export function ofStream(facts: readonly Fact[], stream: StreamId): Fact[] {
  return facts.filter((fact) => fact.stream === stream)
}
