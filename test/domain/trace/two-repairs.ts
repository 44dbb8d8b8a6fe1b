import type { Fact } from '@/lib/domain/facts/fact-kinds'
import { foldRepair } from '@/lib/domain/fold/fold-repair'
import type { Use } from '@/lib/domain/fold/repair-state'
import type { RepairIdentity } from '@/lib/domain/trace/trace-batch'
import { at, factMaker, stream } from '../fold/fact-maker'
import { m } from '../fold/small-job-plan'

export const NOW = at('06-10 09:00')

/** Resin mixes of two repairs as the demonstration has them, and filler of a third that is stopped. */
export function twoRepairs() {
  const { facts, make } = factMaker()
  const open = (repair: string) =>
    make(repair, 'repair-opened', '05-10 09:00', {
      number: repair.slice(7),
      project: 'project:p',
      line: 'L-1',
      lineTitle: 'line',
      specification: 'specification:s',
      plan: 'plan:p',
      datum: 'W-17',
      stationFromDatum: { digits: repair.endsWith('1') ? 1240 : 1500, scale: 0 },
      clock: '6',
      clockView: 'downstream',
      geometry: 'straight',
      arrest: 'clamp',
      wrap: 'wet lay-up',
    })
  const mix = (repair: string, when: string, a: string, b: string, no: string, by = 'dorrit') =>
    make(repair, 'recorded', when, {
      point: '14',
      attempt: 1,
      record: {
        type: 'resin-mix',
        mixNo: no,
        mixedBy: by,
        partA: [{ batch: 'batch:RS-884', amount: m(a, 'g') }],
        partB: [{ batch: 'batch:HB-2270', amount: m(b, 'g') }],
        proportion: 'by mass',
        startedAt: at(when),
      },
    })
  open('repair:MD-0041')
  open('repair:MD-0042')
  make('batch:RS-884', 'batch-received', '04-20 09:00', {
    number: 'RS-884',
    role: 'resin',
    product: 'laminating resin A',
    expiresOn: '2026-11-30',
    quantity: m('15.000', 'kg'),
    certificate: 'CC-1',
  })
  make('batch:HB-2270', 'batch-received', '04-20 09:00', {
    number: 'HB-2270',
    role: 'hardener',
    product: 'hardener B',
    expiresOn: '2026-10-31',
    quantity: m('4.000', 'kg'),
  })
  mix('repair:MD-0041', '05-12 11:40', '870', '331', 'M1')
  mix('repair:MD-0041', '05-12 11:57', '870', '330', 'M2')
  mix('repair:MD-0042', '05-19 11:18', '760', '289', 'M1')
  mix('repair:MD-0042', '05-19 11:35', '760', '288', 'M2', 'pavo')
  make('batch:RS-884', 'batch-wasted', '05-19 12:00', { quantity: m('0.140', 'kg'), reason: 'left in the pot' })
  make('batch:RS-884', 'batch-counted', '05-29 08:00', { quantity: m('11.500', 'kg') })
  make('repair:MD-0041', 'recorded', '05-12 07:48', {
    point: '03',
    attempt: 1,
    record: {
      type: 'materials',
      lines: [
        {
          batch: 'batch:RS-884',
          role: 'resin',
          packageState: 'sound',
          certificateMatches: 'yes',
          systemQualified: 'yes',
          decision: 'taken',
        },
      ],
    },
  })
  return { facts, make, open }
}

export const usesOf = (facts: readonly Fact[], ...repairs: string[]): Use[] =>
  repairs.flatMap((repair) => foldRepair(facts, stream(repair), NOW).uses)

export const IDENTITIES: RepairIdentity[] = ['MD-0041', 'MD-0042'].map((number) => ({
  repair: stream(`repair:${number}`),
  number,
  line: 'L-1',
  status: 'in service',
  registerNo: null,
}))

export const BOTH = ['repair:MD-0041', 'repair:MD-0042'] as const
