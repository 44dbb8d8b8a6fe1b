import { decimal } from '@/lib/domain/decimal'
import type { FactId, PersonId, StreamId } from '@/lib/domain/facts/fact'
import type { DraftRecord, JudgeContext, JudgedRecord } from '@/lib/domain/judge/judge-context'
import { parseReading, type Unit } from '@/lib/domain/reading'
import { MarkedReadings } from '@/lib/domain/records/common'
import type { RecordOf } from '@/lib/domain/records/record'
import { Criterion, type Limit, PointNo, type Rule, Specification } from '@/lib/domain/specification'
import type { Moment } from '@/lib/domain/time'

export const stream = (text: string) => text as StreamId
export const person = (text: string) => text as PersonId
export const fact = (no: number) => `01900000-0000-7000-8000-${String(no).padStart(12, '0')}` as FactId
export const point = (text: string) => PointNo.parse(text)
/** A moment of 2026 at the mine: `05-12 09:22` or `05-12 09:02:10`. */
export const at = (text: string): Moment => `2026-${text.slice(0, 5)}T${text.slice(6).padEnd(8, ':00')}+01:00`
export const limit = (value: string, unit: Unit): Limit => ({ from: 'specification', value: decimal(value), unit })

/** Marked readings from a table of rows as the job prints them: `12: 7.2 7.1` gives A-12, B-12. */
export function grid(unit: Unit, rows: Record<string, string>): RecordOf<'hardness'>['readings'] {
  return MarkedReadings.parse(
    Object.entries(rows).flatMap(([clock, text]) =>
      text
        .split(' ')
        .map((one, column) => ({ mark: `${'ABCDE'[column] ?? 'X'}-${clock}`, reading: parseReading(one, unit) })),
    ),
  )
}

/** Marked readings in a row: marks 1, 2, 3. */
export function row(unit: Unit, text: string): RecordOf<'hardness'>['readings'] {
  return MarkedReadings.parse(
    text.split(' ').map((one, index) => ({ mark: String(index + 1), reading: parseReading(one, unit) })),
  )
}

let serial = 0
export function recordedAt(when: string, record: DraftRecord, more: Partial<JudgedRecord> = {}): JudgedRecord {
  serial += 1
  return {
    fact: fact(serial),
    record,
    point: point('16'),
    attempt: 1,
    observedAt: at(when),
    observedBy: person('QI'),
    ...more,
  }
}

export function criterion(rule: Rule, no = '16', id = 'C1'): Criterion {
  return Criterion.parse({ id, point: no, clause: '7.3', title: 'As specified', rule })
}

export function specificationOf(criteria: Criterion[], more: Partial<Specification> = {}): Specification {
  return Specification.parse({
    number: 'QP-T',
    title: 'Test specification',
    arrest: ['plug'],
    wrap: 'wet lay-up',
    decisionRule: 'simple acceptance',
    dewPointFormula: 'WMO-No. 8',
    noticeHours: decimal('26'),
    witnessWaitMinutes: decimal('40'),
    lifeCountsFrom: 'acceptance',
    extendedCuresAllowed: 1,
    criteria,
    ...more,
  })
}

export function contextOf(
  criteria: Criterion[],
  records: JudgedRecord[],
  more: Partial<JudgeContext> = {},
): JudgeContext {
  const no = criteria[0]?.point ?? point('16')
  return {
    point: {
      no,
      title: 'Hardness',
      records: [],
      participation: { crew: null, inspector: 'H', client: null, engineer: null },
      signatures: [],
      blocks: [],
      photos: [],
      selfRelease: false,
      hazards: [],
    },
    attempt: 1,
    asOf: at('05-29 08:00'),
    specification: { stream: stream('specification:QP-T'), revision: 3, body: specificationOf(criteria) },
    records: records.map((one) => ({ ...one, point: no })),
    otherRecords: [],
    design: null,
    defect: null,
    geometry: 'straight',
    photos: [],
    batches: {},
    instruments: {},
    persons: {},
    releasedAt: null,
    clockErrors: {},
    today: '2026-05-29',
    ...more,
  }
}

export function hardness(when: string, rows: Record<string, string>, instrument = 'instrument:HD-03'): JudgedRecord {
  return recordedAt(when, {
    type: 'hardness',
    scale: 'ShoreD',
    readings: grid('ShoreD', rows),
    takenAt: at(when),
    instrument: stream(instrument),
  })
}
