import type { FactId } from '../facts/fact'
import type { FactOf } from '../facts/fact-kinds'
import type { PointNo } from '../specification'

/** Facts that did not know of each other, until a person says which record governs or what becomes of a decision. */
export type ConflictState = {
  point: PointNo
  facts: FactId[]
  text: string
  /** The note of a sync, where it was one that found the conflict. */
  noted: FactId | null
  /** The decision in the record that was made without knowing the facts. */
  decision: FactId | null
  resolved: FactOf<'governs-chosen'> | FactOf<'conflict-settled'> | null
}
