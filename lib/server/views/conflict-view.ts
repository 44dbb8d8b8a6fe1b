import type { FactId, PersonId } from '@/lib/domain/facts/fact'
import type { Fact } from '@/lib/domain/facts/fact-kinds'
import { conflictSides } from '@/lib/domain/fold/conflict-sides'
import type { ConflictState } from '@/lib/domain/fold/conflict-state'
import type { RecordState, RepairState } from '@/lib/domain/fold/repair-state'
import type { Moment } from '@/lib/domain/time'
import { factPlace, factWords } from './audit-words'
import type { ReadingDesk } from './reading-desk'

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

/** The conflicts of a point, decided or not, as the point's page shows them. */
export async function loadConflictViews(
  { desk }: Pick<ReadingDesk, 'desk'>,
  state: RepairState,
  no: string,
): Promise<ConflictView[]> {
  const found = state.conflicts.filter((one) => one.point === no)
  if (found.length === 0) return []
  const facts = new Map(((await desk.factsOf(state.stream)) ?? []).map((fact) => [fact.id, fact]))
  const point = state.points.find((one) => one.no === no)
  const named = (id: FactId): NamedFact[] => {
    const fact = facts.get(id)
    return fact ? [namedFact(fact)] : []
  }
  return found.map((conflict) => {
    const sides = conflictSides(conflict, point)
    return {
      conflict,
      sides,
      decision: (conflict.decision && named(conflict.decision)[0]) ?? null,
      facts: sides.length > 0 ? [] : conflict.facts.flatMap(named),
    }
  })
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
