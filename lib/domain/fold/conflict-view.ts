import type { FactId, PersonId } from '../facts/fact'
import type { Fact } from '../facts/fact-kinds'
import { factPlace, factWords } from '../facts/fact-words'
import type { Moment } from '../time'
import { conflictSides } from './conflict-sides'
import type { ConflictState } from './conflict-state'
import type { PointState, RecordState } from './repair-state'

/** A fact that a conflict names, in words. */
export type NamedFact = { id: FactId; words: string; place: string; by: PersonId; at: Moment; device: string }

/** A conflict with what it is about: records of one point to choose from, or the decision that was made without knowing the facts. */
export type ConflictView = {
  conflict: ConflictState
  /** The records between which a person chooses; empty where none contradicts another. */
  sides: RecordState[]
  decision: NamedFact | null
  facts: NamedFact[]
}

/**
 * A conflict of a point with what it names, in words.
 * @param factOf a fact of the repair by its id
 */
export function conflictView(
  conflict: ConflictState,
  point: PointState | undefined,
  factOf: (id: FactId) => Fact | undefined,
): ConflictView {
  const named = (id: FactId): NamedFact[] => {
    const fact = factOf(id)
    return fact ? [namedFact(fact)] : []
  }
  const sides = conflictSides(conflict, point)
  return {
    conflict,
    sides,
    decision: (conflict.decision && named(conflict.decision)[0]) ?? null,
    facts: sides.length > 0 ? [] : conflict.facts.flatMap(named),
  }
}

function namedFact(fact: Fact): NamedFact {
  return {
    id: fact.id,
    words: factWords(fact),
    place: factPlace(fact).replace(/^repair [^,]+(, )?/, ''),
    by: fact.observedBy,
    at: fact.observedAt,
    device: fact.device.id,
  }
}
