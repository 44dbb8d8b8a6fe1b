import { describe, expect, test } from 'vitest'
import type { FactOf } from '@/lib/domain/facts/fact-kinds'
import { RECORD_TYPES } from '@/lib/domain/records/record'
import { canonicalBytes } from '@/lib/evidence/canonical-bytes'
import { instrumentsBehind } from '@/lib/server/views/audit-instruments'
import { readingsInRecord, valueAt } from '@/lib/server/views/audit-readings'
import { FACTS } from '@/test/demo/folded-demo'

const records = FACTS.filter((fact): fact is FactOf<'recorded'> => fact.kind === 'recorded')
const KINDS = ['number', 'below', 'above', 'through-wall', 'no-access', 'not-applicable', 'not-inspected']

/** Readings found by reading the canonical text alone, as the page words it: no zod, no code of ours. */
function countInText(text: string): number {
  const left = JSON.stringify(
    JSON.parse(text, (name, value: unknown) =>
      ['taps', 'grid', 'reference', 'tolerance', 'series', 'ambient'].includes(name) ? undefined : value,
    ),
  )
  return KINDS.reduce((count, kind) => count + left.split(`"kind":"${kind}"`).length - 1, 0)
}

describe('readings of a record', () => {
  test('are those that the text of the demonstration’s records holds, and the design sheet has none', () => {
    expect(records.length).toBeGreaterThan(50)
    for (const { body } of records) {
      const found = readingsInRecord(body.record, false)
      const text = new TextDecoder().decode(canonicalBytes(body.record))
      expect(found.length).toBe(body.record.type === 'design' ? 0 : countInText(text))
      for (const one of found) expect(valueAt(body.record, one.path)).toBe(one.value)
    }
    expect(new Set(records.map((one) => one.body.record.type)).size).toBeGreaterThan(RECORD_TYPES.length / 2)
  })

  test('stand in the order of the canonical bytes', () => {
    for (const { body } of records) {
      const text = new TextDecoder().decode(canonicalBytes(body.record))
      let from = 0
      for (const { value } of readingsInRecord(body.record, true)) {
        const at = text.indexOf(new TextDecoder().decode(canonicalBytes(value)), from)
        expect(at).toBeGreaterThanOrEqual(from)
        from = at + 1
      }
    }
  })

  test('take in the values of a logger only when asked', () => {
    const cure = records.find((one) => one.body.record.type === 'cure')
    if (!cure) throw new Error('the demonstration has no cure')
    const without = readingsInRecord(cure.body.record, false)
    const withSeries = readingsInRecord(cure.body.record, true)
    expect(withSeries.length).toBeGreaterThan(without.length + 10)
    expect(without.some((one) => one.path.includes('series'))).toBe(false)
  })
})

describe('the instrument behind a reading', () => {
  test('is the one its own field names: air and steel of a climate record', () => {
    const climate = records.find((one) => one.body.record.type === 'climate')
    const record = climate?.body.record
    if (!climate || record?.type !== 'climate') throw new Error('the demonstration has no climate record')
    for (const reading of readingsInRecord(record, false)) {
      const wanted = reading.path[0] === 'steel' ? record.steelInstrument : record.instrument
      expect(instrumentsBehind(climate, reading)).toEqual({ instruments: [wanted], at: record.takenAt })
    }
  })

  test('is none where the record names none', () => {
    const ply = records.find((one) => one.body.record.type === 'ply')
    const reading = ply ? readingsInRecord(ply.body.record, false)[0] : undefined
    if (!ply || !reading) throw new Error('the demonstration has no ply')
    expect(instrumentsBehind(ply, reading).instruments).toEqual([])
  })
})
