import type { RecordType } from '../records/record'
import type { Rule } from '../specification'
import { instantOf, type Moment, showMoment } from '../time'
import { type JudgeFrame, recordsOfType, type TypedRecord } from './frame'
import { type OrderPair, pairsWithin } from './order-pairs'
import { type Check, findingOf, notProven, outcomeOf, type RuleOutcome } from './outcome'

/** Times in the order of the work: nothing used before it was mixed, read before it was there, or ended before it began. What is reversed is kept and found. */
export function judgeOrder(_rule: Extract<Rule, { kind: 'order-of-facts' }>, frame: JudgeFrame): RuleOutcome {
  const { records } = frame.context
  if (records.length === 0) return notProven(frame, 'no-readings', 'nothing recorded')
  const pairs = [...pairsWithin(records), ...pairsBetween(frame)]
  const reversed = pairs.filter(
    ({ before, after }) => before !== undefined && after !== undefined && instantOf(before) > instantOf(after),
  )
  const checks = reversed.map(
    ({ code, mark, before, after, records: of }): Check => ({
      verdict: 'fail',
      finding: findingOf(frame, code, {
        mark,
        found: after ? showMoment(after) : undefined,
        limit: before ? showMoment(before) : undefined,
        facts: of.map((one) => one.fact),
      }),
    }),
  )
  return checks.length > 0
    ? outcomeOf(checks, `${checks.length} out of order`)
    : outcomeOf([{ verdict: 'pass' }], 'in order')
}

type Timed = { at: Moment | undefined; of: TypedRecord<RecordType>['judged']; key?: string | undefined }

/** Pairs across records: this attempt's against those it builds on, at this point or at others. */
function pairsBetween(frame: JudgeFrame): OrderPair[] {
  const { records, otherRecords } = frame.context
  const all = [...records, ...otherRecords]
  const own = <T extends RecordType>(
    type: T,
    time: (one: TypedRecord<T>['record']) => Moment | undefined,
    key?: (one: TypedRecord<T>['record']) => string | undefined,
  ) => timed(recordsOfType(records, type), time, key)
  const any = <T extends RecordType>(
    type: T,
    time: (one: TypedRecord<T>['record']) => Moment | undefined,
    key?: (one: TypedRecord<T>['record']) => string | undefined,
  ) => timed(recordsOfType(all, type), time, key)
  const lastPly = [...latestOf(any('ply', (one) => one.endedAt)), ...latestOf(any('tape-roll', (one) => one.wrapEnd))]
  const fillers = latestOf(any('filler-thickness', (one) => one.placedAt))
  return [
    ...across(
      'ply-before-its-mix',
      any(
        'resin-mix',
        (one) => one.startedAt,
        (one) => one.mixNo,
      ),
      own(
        'ply',
        (one) => one.startedAt,
        (one) => one.mixNo,
      ),
    ),
    ...across(
      'placed-before-mixed',
      any(
        'filler-mix',
        (one) => one.startedAt,
        (one) => one.mixNo,
      ),
      own(
        'filler-thickness',
        (one) => one.placedAt,
        (one) => one.mixNo,
      ),
    ),
    ...across(
      'hardness-before-last-ply',
      lastPly,
      own('hardness', (one) => one.takenAt),
    ),
    ...across(
      'thickness-before-last-ply',
      lastPly,
      own('thickness', (one) => one.takenAt),
    ),
    ...across('cure-before-last-ply', lastPly, latestOf(own('cure', (one) => one.endedAt))),
    ...across(
      'filler-read-before-placed',
      fillers,
      own('filler-cure', (one) => one.takenAt),
    ),
    ...across(
      'watch-before-arrest',
      latestOf(
        any('arrest', ({ arrest }) =>
          arrest?.method === 'plug, plate and band' ? arrest.pressedAt : arrest?.placedAt,
        ),
      ),
      own('arrest-watch', (one) => one.startedAt),
    ),
    ...inTurn(
      'plies-backwards',
      own(
        'ply',
        (one) => one.startedAt,
        (one) => number(one.plyNo),
      ),
    ),
    ...inTurn(
      'rolls-backwards',
      own(
        'tape-roll',
        (one) => one.wrapStart,
        (one) => number(one.rollNo),
      ),
    ),
  ]
}

function timed<T extends RecordType>(
  list: TypedRecord<T>[],
  time: (one: TypedRecord<T>['record']) => Moment | undefined,
  key?: (one: TypedRecord<T>['record']) => string | undefined,
): Timed[] {
  return list.map(({ record, judged }) => ({ at: time(record), of: judged, key: key?.(record) }))
}

function latestOf(list: readonly Timed[]): Timed[] {
  const known = list.filter((one) => one.at !== undefined).sort((a, b) => instantOf(a.at ?? '') - instantOf(b.at ?? ''))
  return known.slice(-1)
}

/** Each of the later against each of the earlier with the same key. */
function across(code: string, earlier: readonly Timed[], later: readonly Timed[]): OrderPair[] {
  return later.flatMap((after) =>
    earlier
      .filter((before) => before.key === after.key)
      .map((before) => ({
        code,
        mark: after.key ?? '',
        before: before.at,
        after: after.at,
        records: [before.of, after.of],
      })),
  )
}

/** Numbered things begin in the order of their numbers. */
function inTurn(code: string, list: readonly Timed[]): OrderPair[] {
  const sorted = list.filter((one) => one.key !== undefined).toSorted((a, b) => Number(a.key) - Number(b.key))
  return sorted.slice(1).map((after, index) => ({
    code,
    mark: `no. ${after.key}`,
    before: sorted[index]?.at,
    after: after.at,
    records: [sorted[index]?.of, after.of].filter((one) => one !== undefined),
  }))
}

function number(value: number | undefined): string | undefined {
  return value === undefined ? undefined : String(value)
}
