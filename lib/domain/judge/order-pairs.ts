import type { RecordType } from '../records/record'
import type { Moment } from '../time'
import { recordsOfType, type TypedRecord } from './frame'
import type { JudgedRecord } from './judge-context'

/** Two times that must not be the wrong way round: `before` may not be later than `after`. */
export type OrderPair = {
  code: string
  mark: string
  before: Moment | undefined
  after: Moment | undefined
  records: JudgedRecord[]
}

/** Pairs within one record: the record contradicts itself when they are reversed. */
export function pairsWithin(records: readonly JudgedRecord[]): OrderPair[] {
  const each = <T extends RecordType>(
    type: T,
    pairs: (one: TypedRecord<T>['record']) => [string, string, Moment | undefined, Moment | undefined][],
  ) =>
    recordsOfType(records, type).flatMap(({ record, judged }) =>
      pairs(record).map(([code, mark, before, after]): OrderPair => ({ code, mark, before, after, records: [judged] })),
    )
  return [
    ...each('cleanliness', (one) => [['checked-before-prepared', 'band', one.finishedAt, one.checkedAt]]),
    ...each('arrest', ({ arrest }) =>
      arrest?.method === 'plug, plate and band'
        ? [
            ['kneading-reversed', 'plug', arrest.kneadStart, arrest.kneadEnd],
            ['pressed-before-kneaded', 'plug', arrest.kneadEnd, arrest.pressedAt],
            ['hard-before-pressed', 'plug', arrest.pressedAt, arrest.judgedHardAt],
          ]
        : [],
    ),
    ...each('arrest-watch', (one) => [
      ['watch-reversed', 'watch', one.startedAt, one.endedAt],
      ['drip-before-watch', 'watch', one.startedAt, one.dripSeenAt],
    ]),
    ...[...each('filler-mix', mixPairs), ...each('resin-mix', mixPairs)],
    ...each('filler-thickness', (one) => [
      ['measured-before-placed', one.mixNo ?? 'filler', one.placedAt, one.measuredAt],
    ]),
    ...each('ply', (one) => [['ply-reversed', `ply ${one.plyNo ?? '?'}`, one.startedAt, one.endedAt]]),
    ...each('tape-roll', (one) => [
      ['wrapped-before-soaked', `roll ${one.rollNo ?? '?'}`, one.soakStart, one.wrapStart],
      ['wrap-reversed', `roll ${one.rollNo ?? '?'}`, one.wrapStart, one.wrapEnd],
    ]),
    ...each('cure', (one) => [['cure-reversed', 'cure', one.startedAt, one.endedAt]]),
    ...each('hardness', (one) => [['hardness-reversed', 'hardness', one.takenAt, one.endedAt]]),
    ...each('pressure-test', (one) =>
      (one.readings ?? [])
        .slice(1)
        .map((reading, index) => ['test-reversed', 'test', one.readings?.[index]?.at, reading.at]),
    ),
    ...each('permit', (one) => [['permit-reversed', one.permitNo ?? 'permit', one.validFrom, one.validTo]]),
  ]
}

function mixPairs(one: {
  mixNo?: string
  startedAt?: Moment
  endedAt?: Moment | undefined
  usedBy?: Moment | undefined
}): [string, string, Moment | undefined, Moment | undefined][] {
  return [
    ['mix-reversed', one.mixNo ?? 'mix', one.startedAt, one.endedAt],
    ['used-before-mixed', one.mixNo ?? 'mix', one.startedAt, one.usedBy],
  ]
}
