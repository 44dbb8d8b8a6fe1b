import type { FactId } from '../facts/fact'
import type { Moment } from '../time'
import { instantOf } from '../time'
import { type JudgeFrame, recordsOfType } from './frame'
import type { DraftOf } from './yield-builder'

export type MixRecord = DraftOf<'filler-mix'> | DraftOf<'resin-mix'>
export type Mix = { record: MixRecord; fact: FactId | null; mark: string }

/** The mixes of this attempt, of one kind or both. A mark is the mix number. */
export function mixesOf(frame: JudgeFrame, kinds: readonly MixRecord['type'][]): Mix[] {
  const { records } = frame.context
  const all = [...recordsOfType(records, 'filler-mix'), ...recordsOfType(records, 'resin-mix')]
  return all
    .filter(({ record }) => kinds.includes(record.type))
    .map(({ record, judged }) => ({ record, fact: judged.fact, mark: record.mixNo ?? 'mix' }))
}

/** When a mix was used up: as stated, else when its filler was placed or its last ply ended; null while neither is known. */
export function usedAt(frame: JudgeFrame, { record }: Mix): Moment | null {
  if (record.usedBy) return record.usedBy
  const records = [...frame.context.records, ...frame.context.otherRecords]
  const ends =
    record.type === 'filler-mix'
      ? recordsOfType(records, 'filler-thickness')
          .filter((one) => one.record.mixNo === record.mixNo)
          .map((one) => one.record.placedAt)
      : recordsOfType(frame.context.records, 'ply')
          .filter((one) => one.record.mixNo === record.mixNo)
          .map((one) => one.record.endedAt)
  return ends.reduce<Moment | null>(
    (last, one) => (one && (!last || instantOf(one) > instantOf(last)) ? one : last),
    null,
  )
}
