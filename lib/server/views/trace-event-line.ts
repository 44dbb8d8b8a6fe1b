import type { FactId, PersonId } from '@/lib/domain/facts/fact'
import type { Fact } from '@/lib/domain/facts/fact-kinds'
import type { Moment } from '@/lib/domain/time'

/** One thing that was done to a batch, an instrument, a person, a nonconformance or a project. `late` says from what it was entered late. */
export type EventLine = { fact: FactId; at: Moment; by: string; title: string; detail: string; late: string | null }

/** The line of a fact with its words; the name of who observed it, or the id where no name is known. */
export function eventLine(fact: Fact, names: Record<PersonId, string>, title: string, detail = ''): EventLine {
  return {
    fact: fact.id,
    at: fact.observedAt,
    by: names[fact.observedBy] ?? fact.observedBy,
    title,
    detail,
    late: fact.late ? `from ${fact.late.source}: ${fact.late.reason}` : null,
  }
}
