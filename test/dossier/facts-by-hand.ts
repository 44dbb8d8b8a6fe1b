import type { FactId, PersonId, Receipt, StreamId } from '@/lib/domain/facts/fact'
import type { BodyOf, Fact, FactKind, FactOf } from '@/lib/domain/facts/fact-kinds'
import type { AttemptState, PointState, RecordState } from '@/lib/domain/fold/repair-state'
import type { CriterionResult } from '@/lib/domain/judge/verdict'
import { rollUp } from '@/lib/domain/judge/verdict'
import { measured, parseReading, type Unit } from '@/lib/domain/reading'
import type { MarkedReading } from '@/lib/domain/records/common'
import type { PointRecord } from '@/lib/domain/records/record'
import type { PointNo, Rule } from '@/lib/domain/specification'

export const pid = (name: string): PersonId => name as PersonId
export const sid = (stream: string): StreamId => stream as StreamId
export const no = (point: string): PointNo => point as PointNo
export const HEX = (digit: string): string & FactOf<'photo-attached'>['body']['photo']['sha256'] =>
  digit.repeat(64).slice(0, 64) as FactOf<'photo-attached'>['body']['photo']['sha256']

let made = 0
export const facts: Fact[] = []
export const receipts = new Map<FactId, Receipt>()

/** A fact written by hand: times are `05-19 08:41`, in UTC+01:00. */
export function fact<K extends FactKind>(
  kind: K,
  time: string,
  by: string,
  body: BodyOf<K>,
  more: { stream?: string; enteredAt?: string; late?: Fact['late'] } = {},
): FactOf<K> {
  made += 1
  const at = (text: string): string => `2026-${text.replace(' ', 'T')}:00+01:00`
  const id = `0190a000-0000-7000-8000-${String(made).padStart(12, '0')}` as FactId
  const one = {
    v: 1,
    id,
    stream: sid(more.stream ?? 'repair:T-1'),
    kind,
    observedAt: at(time),
    observedBy: pid(by),
    enteredAt: at(more.enteredAt ?? time),
    enteredBy: pid(by),
    device: { id: 'tablet-1', clockOffsetMs: 0 },
    ...(more.late ? { late: more.late } : {}),
    body,
  } as unknown as FactOf<K>
  facts.push(one as Fact)
  receipts.set(id, { receivedAt: at(more.enteredAt ?? time), receivedBy: pid(by), position: made })
  return one
}

/** Readings at marks from text: `A-12 7.9, A-3 TW`. */
export function marks(text: string, unit: Unit): MarkedReading[] {
  return text.split(',').map((pair) => {
    const [mark = '', value = ''] = pair.trim().split(' ')
    const reading = parseReading(value, unit)
    if (!reading) throw new RangeError(`no reading: ${pair}`)
    return { mark, reading }
  })
}

const CLOCKS = ['12', '3', '6', '9']
const STATIONS = ['A', 'B', 'C', 'D', 'E']

/** A full grid, rows 12, 3, 6, 9 of five figures each. */
export function grid(rows: string, unit: Unit): MarkedReading[] {
  return rows.split('|').flatMap((row, r) =>
    row
      .trim()
      .split(/\s+/)
      .flatMap((value, c) => marks(`${STATIONS[c]}-${CLOCKS[r]} ${value}`, unit)),
  )
}

export const GRID = {
  stations: STATIONS.map((name, index) => ({ name, fromLeak: measured(String((index - 2) * 60), 'mm') })),
  clocks: CLOCKS,
}

export function criterion(
  point: string,
  title: string,
  rule: Rule,
  limit: string,
  found: string,
  verdict: CriterionResult['verdict'],
  findings: Partial<CriterionResult['findings'][number]>[] = [],
): CriterionResult {
  return {
    criterion: { id: `${point}.${title.length}`, point: no(point), clause: `8.${point}`, title, rule },
    specification: sid('specification:QP-T'),
    revision: 3,
    limit,
    found,
    verdict,
    findings: findings.map((one) => ({ code: 'out-of-limit', clause: `8.${point}`, facts: [], ...one })),
    questions: [],
    figures: {},
    working: [`${found} against ${limit}`],
  }
}

export function record(
  point: string,
  attempt: number,
  time: string,
  by: string,
  body: PointRecord,
  more: Parameters<typeof fact>[4] = {},
): RecordState {
  return {
    fact: fact('recorded', time, by, { point: no(point), attempt, record: body }, more),
    record: body,
    corrections: [],
    overruledBy: null,
    late: more.late !== undefined,
    signedBy: [],
    transcription: null,
  }
}

export function attempt(
  point: string,
  number: number,
  state: AttemptState['state'],
  records: RecordState[],
  criteria: CriterionResult[],
  more: Partial<AttemptState> = {},
): AttemptState {
  return {
    point: no(point),
    attempt: number,
    state,
    records,
    photos: [],
    photosToCome: [],
    scans: [],
    signatures: [],
    submitted: null,
    isSubmitted: false,
    refusals: [],
    releases: [],
    criteria,
    verdict: rollUp(criteria.map((one) => one.verdict)),
    questions: [],
    conceded: null,
    notApplicable: null,
    opened: null,
    passedWithoutRelease: [],
    missing: [],
    firstAt: records[0]?.fact.observedAt ?? null,
    lastAt: records.at(-1)?.fact.observedAt ?? null,
    ...more,
  }
}

export function point(
  number: string,
  title: string,
  attempts: AttemptState[],
  more: Partial<PointState> = {},
): PointState {
  const current = attempts.at(-1)
  if (!current) throw new RangeError('a point without attempts')
  return {
    no: no(number),
    attempts,
    current,
    blockedBy: [],
    awaiting: [],
    participation: { crew: 'H', inspector: 'H', client: 'W', engineer: null },
    plan: {
      no: no(number),
      title,
      records: [],
      participation: { crew: 'H', inspector: 'H', client: 'W', engineer: null },
      signatures: [],
      blocks: [],
      photos: [],
      selfRelease: false,
      hazards: [],
    },
    ...more,
  }
}
