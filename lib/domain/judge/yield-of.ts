import type { PersonId } from '../facts/fact'
import type { RecordType } from '../records/record'
import type { Moment } from '../time'
import type { DraftRecord, RecordYield } from './judge-context'
import { AFTER_YIELDS } from './yield-after'
import { ARREST_YIELDS } from './yield-arrest'
import { ASSESSMENT_YIELDS } from './yield-assessment'
import { startYield, type YieldBuilder, type YieldTable } from './yield-builder'
import { SURFACE_YIELDS } from './yield-surface'
import { WRAP_YIELDS } from './yield-wrap'

const YIELDS: YieldTable<RecordType> = {
  ...ASSESSMENT_YIELDS,
  ...SURFACE_YIELDS,
  ...ARREST_YIELDS,
  ...WRAP_YIELDS,
  ...AFTER_YIELDS,
}

/**
 * What a record yields to the rules: readings by quantity, events, yes/no statements, and uses of batches, instruments and persons. Names are those of
 * quantity-names.ts. A record still being keyed yields what it has: a missing field yields nothing, never a zero, a no or the present time.
 * The observer is a use of role `observer`. A refused package or instrument is a use of role `refused`.
 */
export function yieldOf(record: DraftRecord, observedAt: Moment, observedBy: PersonId): RecordYield {
  const into = startYield(observedAt)
  const fill = YIELDS[record.type] as (record: DraftRecord, into: YieldBuilder) => void
  fill(record, into)
  into.person(observedBy, 'observer')
  return into.done()
}
