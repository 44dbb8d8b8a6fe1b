import { describe, expect, it } from 'vitest'
import { decimal } from '@/lib/domain/decimal'
import type { DraftRecord } from '@/lib/domain/judge/judge-context'
import { judgeCriterion } from '@/lib/domain/judge/judge-criterion'
import { EVENTS, FLAGS, QUANTITIES } from '@/lib/domain/judge/quantity-names'
import { yieldOf } from '@/lib/domain/judge/yield-of'
import { measured } from '@/lib/domain/reading'
import { RECORD_TYPES } from '@/lib/domain/records/record'
import { Rule } from '@/lib/domain/specification'
import { at, contextOf, criterion, limit, person, recordedAt, stream } from './judge-fixtures'

const table = {
  kind: 'interpolated' as const,
  rows: [
    { temp: decimal('10'), minutes: decimal('30') },
    { temp: decimal('30'), minutes: decimal('10') },
  ],
}
const RULES: Rule[] = [
  { kind: 'each', quantity: 'hardness', min: limit('74', 'ShoreD') },
  { kind: 'mean', quantity: 'hardness', min: limit('74', 'ShoreD') },
  { kind: 'count', quantity: 'hardness', atLeast: 2 },
  { kind: 'grade', grades: ['Sa 2½'] },
  { kind: 'yes', flag: 'dry' },
  { kind: 'no', flag: 'weep' },
  { kind: 'window', start: 'cure-start', end: 'cure-end', maxMinutes: decimal('10'), pick: 'first' },
  { kind: 'ratio', partBPer100: decimal('38'), tolerance: decimal('1') },
  { kind: 'working-time', table, of: 'resin-mix' },
  { kind: 'working-time', table, of: 'filler-mix' },
  { kind: 'working-time', table, of: 'tape-roll' },
  { kind: 'hardening-time', table },
  { kind: 'plug-amount', timesHoleVolume: decimal('2') },
  { kind: 'band-length', tailAtLeast: decimal('45') },
  { kind: 'tape-start', shareOfTotalLength: decimal('0.5') },
  { kind: 'cure-hold', hours: decimal('18'), atLeastTemp: decimal('16'), probeAtColdest: true },
  { kind: 'cure-equivalent', table },
  {
    kind: 'pressure-drop',
    maxDrop: decimal('0.02'),
    minMinutes: decimal('75'),
    correction: {
      modulusMPa: decimal('207000'),
      poisson: decimal('0.3'),
      alphaPerK: 1e-5,
      betaPerK: 1e-4,
      bulkModulusMPa: decimal('2150'),
      ends: 'free',
    },
  },
  { kind: 'findings', allowed: [] },
  { kind: 'design-envelope' },
  { kind: 'plies', countedBy: 2 },
  { kind: 'instruments-valid' },
  { kind: 'batches-valid' },
  { kind: 'persons-qualified' },
  { kind: 'permit-valid' },
  { kind: 'order-of-facts' },
]

describe('a record being keyed', () => {
  it.each(RECORD_TYPES)('%s with nothing but its type yields no reading, event or flag', (type) => {
    const yields = yieldOf({ type } as DraftRecord, at('05-12 09:00'), person('T1'))
    expect([yields.readings, yields.events.filter((event) => event.at !== at('05-12 09:00')), yields.flags]).toEqual([
      [],
      [],
      [],
    ])
    expect(yields.uses).toEqual([{ of: stream('person:T1'), role: 'observer', at: at('05-12 09:00') }])
  })

  it('covers every kind of rule', () => {
    const kinds = Rule.unwrap().options.map((option) => option.shape.kind.value)
    expect(new Set(RULES.map((rule) => rule.kind))).toEqual(new Set(kinds.filter((kind) => kind !== 'photos')))
  })

  it.each(RULES)('$kind never passes nor fails on empty records of every type', (rule) => {
    const empty = RECORD_TYPES.map((type) => recordedAt('05-12 09:00', { type } as DraftRecord))
    const verdict = judgeCriterion(criterion(rule), contextOf([criterion(rule)], empty)).verdict
    expect(verdict).toBe(rule.kind === 'order-of-facts' ? 'pass' : 'not proven')
  })
})

describe('uses', () => {
  it('of a mix: each batch with its amount and mix, scale, mixer, checker, supervisor', () => {
    const { uses, readings } = yieldOf(
      {
        type: 'resin-mix',
        mixNo: 'M1',
        mixedBy: person('T1'),
        checkedBy: person('L1'),
        supervisedBy: person('L1'),
        startedAt: at('05-12 11:40'),
        scale: stream('instrument:WB-09'),
        partA: [{ batch: stream('batch:RS-884'), amount: measured('870', 'g') }],
        partB: [{ batch: stream('batch:HB-2270'), amount: measured('331', 'g') }],
      },
      at('05-12 11:41'),
      person('QI'),
    )
    expect(uses).toEqual([
      {
        of: 'batch:RS-884',
        role: 'resin',
        at: at('05-12 11:40'),
        into: 'M1',
        amount: { digits: 870, scale: 0, unit: 'g' },
      },
      {
        of: 'batch:HB-2270',
        role: 'hardener',
        at: at('05-12 11:40'),
        into: 'M1',
        amount: { digits: 331, scale: 0, unit: 'g' },
      },
      { of: 'instrument:WB-09', role: 'mass', at: at('05-12 11:40') },
      { of: 'person:T1', role: 'mixer', at: at('05-12 11:40'), into: 'M1', supervisedBy: 'L1' },
      { of: 'person:L1', role: 'checker', at: at('05-12 11:40'), into: 'M1' },
      { of: 'person:QI', role: 'observer', at: at('05-12 11:41') },
    ])
    expect(readings.find((one) => one.quantity === 'resin-mix-mass')?.reading).toMatchObject({
      digits: 1201,
      scale: 0,
      unit: 'g',
    })
  })
  it('names are unique across the tables that a specification may cite', () => {
    for (const table of [QUANTITIES, EVENTS, FLAGS])
      for (const name of Object.keys(table)) expect(name).toMatch(/^[a-z][a-z0-9-]+$/)
  })
})
