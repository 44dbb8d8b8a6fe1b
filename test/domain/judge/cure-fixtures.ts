import { decimal } from '@/lib/domain/decimal'
import { judgeCriterion } from '@/lib/domain/judge/judge-criterion'
import { measured } from '@/lib/domain/reading'
import type { RecordOf } from '@/lib/domain/records/record'
import type { Rule } from '@/lib/domain/specification'
import { at, contextOf, criterion, recordedAt } from './judge-fixtures'

export const HOLD: Extract<Rule, { kind: 'cure-hold' }> = {
  kind: 'cure-hold',
  hours: decimal('18'),
  atLeastTemp: decimal('16'),
  probeAtColdest: false,
}

export const design = {
  designDiameter: measured('219.1', 'mm'),
  designWall: measured('8.2', 'mm'),
} as RecordOf<'design'>

type Judged = ReturnType<typeof recordedAt>

export const judge = (rule: Rule, records: Judged[], more: Parameters<typeof contextOf>[2] = {}) =>
  judgeCriterion(criterion(rule, '15'), contextOf([criterion(rule, '15')], records, { design, ...more }))

export const cure = (probes: Record<string, [string, string][]>, more: Partial<RecordOf<'cure'>> = {}) =>
  recordedAt('05-19 12:00', {
    type: 'cure',
    startedAt: at('05-19 12:00'),
    endedAt: at('05-20 06:00'),
    interrupted: 'no',
    postCure: 'no',
    probes: Object.entries(probes).map(([clock, series]) => ({
      place: 'laminate',
      clock,
      series: series.map(([when, temp]) => ({ at: at(when), reading: measured(temp, 'degC') })),
    })),
    ...more,
  })
