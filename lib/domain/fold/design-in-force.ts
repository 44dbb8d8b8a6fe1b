import type { RecordOf } from '../records/record'
import type { Moment } from '../time'
import type { RepairGround } from './repair-ground'
import { isAtOrBefore } from './work-span'

/** The design sheet in force when work ended: the last governing one observed by then, by revision and time; the latest for work not done. */
export function designAt(ground: RepairGround, at: Moment | null): RecordOf<'design'> | null {
  const sheets = ground.records.flatMap((one) =>
    one.overruledBy === null && one.record.type === 'design' && (at === null || isAtOrBefore(one.fact.observedAt, at))
      ? [one.record]
      : [],
  )
  return sheets.reduce<RecordOf<'design'> | null>(
    (latest, one) => (latest === null || one.revision >= latest.revision ? one : latest),
    null,
  )
}

/** The defect as last found: the latest governing record of it. */
export function presentDefect(ground: RepairGround): RecordOf<'defect'> | null {
  return ground.records.reduce<RecordOf<'defect'> | null>(
    (last, one) => (one.overruledBy === null && one.record.type === 'defect' ? one.record : last),
    null,
  )
}
