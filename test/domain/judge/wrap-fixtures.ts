import { decimal } from '@/lib/domain/decimal'
import { judgeCriterion } from '@/lib/domain/judge/judge-criterion'
import { measured } from '@/lib/domain/reading'
import type { RecordOf } from '@/lib/domain/records/record'
import type { Rule } from '@/lib/domain/specification'
import { at, contextOf, criterion, recordedAt, stream } from './judge-fixtures'

const defect = {
  holeAxial: measured('3', 'mm'),
  holeHoop: measured('2', 'mm'),
  nominalWall: measured('6.0', 'mm'),
} as RecordOf<'defect'>

export const design = { plies: measured('8', 'plies'), totalLength: measured('300', 'mm') } as RecordOf<'design'>

const rows = (pairs: [string, string][]) =>
  pairs.map(([temp, minutes]) => ({ temp: decimal(temp), minutes: decimal(minutes) }))

export const HARD: Rule = {
  kind: 'hardening-time',
  table: {
    kind: 'interpolated',
    rows: rows([
      ['12', '38'],
      ['18', '26'],
      ['25', '17'],
    ]),
  },
}

type Plug = Extract<RecordOf<'arrest'>['arrest'], { method: 'plug, plate and band' }>

export const plug = (changes: Partial<Plug> = {}) =>
  recordedAt('05-14 09:02', {
    type: 'arrest',
    arrest: {
      method: 'plug, plate and band',
      girths: [measured('359.0', 'mm'), measured('359.2', 'mm')],
      bandThickness: measured('0.7', 'mm'),
      bandCut: measured('425', 'mm'),
      bandTail: measured('60', 'mm'),
      bandBuild: measured('0.5', 'mm'),
      plateThickness: measured('0.5', 'mm'),
      puttyBatch: stream('batch:PS-0419'),
      puttyUsed: measured('500', 'mm3'),
      kneadStart: at('05-14 09:02:10'),
      kneadEnd: at('05-14 09:05:30'),
      oneColour: 'yes',
      ambient: measured('18.2', 'degC'),
      pressedAt: at('05-14 09:06'),
      bandTightAt: at('05-14 09:08'),
      judgedHardAt: at('05-14 09:34'),
      overHole: 'yes',
      surplusCut: 'yes',
      nonSparkingAsked: 'yes',
      nonSparkingTools: 'yes',
      ...changes,
    },
  })

export const judge = (rule: Rule, records: ReturnType<typeof plug>[], more: Parameters<typeof contextOf>[2] = {}) =>
  judgeCriterion(criterion(rule, '08'), contextOf([criterion(rule, '08')], records, { defect, design, ...more }))
