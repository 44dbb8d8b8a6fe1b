import { decimal } from '@/lib/domain/decimal'
import type { BodyOf } from '@/lib/domain/facts/fact-kinds'
import { planTemplate } from '@/lib/domain/templates/plan-template'
import { photoBody } from '@/test/domain/fold/photo-body'
import { measured } from '@/test/store/measured-for-tests'
import { type FactJson, factJson } from './facts-for-tests'

/** Project, specification and plan that the repairs below stand on. */
export function groundFacts(): FactJson[] {
  const issued = { revision: 1, issuedOn: '2026-04-20', changes: 'first issue', approvedBy: 'E' }
  return [
    factJson(
      'project:P-1',
      'project-opened',
      { name: 'Dewatering', site: 'Shaft 2', utcOffset: '+01:00', owner: 'Quellmark' },
      { observedAt: '2026-04-01T08:00:00+01:00' },
    ),
    factJson(
      'specification:S-1',
      'specification-issued',
      {
        ...issued,
        body: {
          number: 'S-1',
          title: 'Wet lay-up',
          arrest: ['tapered plug'],
          wrap: 'wet lay-up',
          decisionRule: 'simple acceptance',
          dewPointFormula: 'Magnus',
          noticeHours: decimal('26'),
          witnessWaitMinutes: decimal('40'),
          lifeCountsFrom: 'acceptance',
          extendedCuresAllowed: 1,
          tapRule: 'mean',
          notes: [],
          criteria: [
            {
              id: 'F-1',
              point: '10',
              clause: '7.1',
              title: 'Filler ratio',
              rule: { kind: 'ratio', partBPer100: decimal('38'), tolerance: decimal('1.5') },
            },
          ],
        },
      } as unknown as BodyOf<'specification-issued'>,
      { observedAt: '2026-04-20T08:00:00+01:00' },
    ),
    factJson(
      'plan:ITP-1',
      'plan-issued',
      { ...issued, body: planTemplate('wet lay-up') } as unknown as BodyOf<'plan-issued'>,
      { observedAt: '2026-04-20T08:00:00+01:00' },
    ),
    factJson(
      'batch:FP-1',
      'batch-received',
      {
        number: 'FP-1',
        role: 'filler',
        product: 'Filler',
        expiresOn: '2026-09-30',
        quantity: measured('6', 'kits'),
      } as unknown as BodyOf<'batch-received'>,
      { observedAt: '2026-05-01T08:00:00+01:00' },
    ),
  ]
}

/** A repair opened, with one filler mix from batch FP-1. */
export function repairFacts(number: string): FactJson[] {
  const stream = `repair:${number}`
  return [
    factJson(
      stream,
      'repair-opened',
      {
        number,
        project: 'project:P-1',
        line: 'MDW-250',
        lineTitle: 'Rising main',
        specification: 'specification:S-1',
        plan: 'plan:ITP-1',
        datum: 'weld W-17',
        stationFromDatum: decimal('1240'),
        clock: '6',
        clockView: 'looking downstream',
        geometry: 'straight',
        arrest: 'tapered plug',
        wrap: 'wet lay-up',
      } as unknown as BodyOf<'repair-opened'>,
      { observedAt: '2026-05-11T08:00:00+01:00' },
    ),
    factJson(
      stream,
      'recorded',
      {
        point: '10',
        attempt: 1,
        record: {
          type: 'filler-mix',
          mixNo: 'F1',
          mixedBy: 'T1',
          partA: [{ batch: 'batch:FP-1', amount: measured('640', 'g') }],
          partB: [{ batch: 'batch:FP-1', amount: measured('243', 'g') }],
          proportion: 'by mass',
          startedAt: '2026-05-12T10:05:00+01:00',
          scale: 'instrument:WB-09',
        },
      } as unknown as BodyOf<'recorded'>,
      { observedAt: '2026-05-12T10:06:00+01:00' },
    ),
  ]
}

/** A photo attached at point 10. */
export function photoFact(number: string, look: { sha256: string; dHash: string; pHash: string }): FactJson {
  return factJson(
    `repair:${number}`,
    'photo-attached',
    {
      point: '10',
      attempt: 1,
      caption: 'scale and labels',
      photo: photoBody('b', { sha256: look.sha256, measures: { dHash: look.dHash, pHash: look.pHash } }),
    } as unknown as BodyOf<'photo-attached'>,
    { observedAt: '2026-05-12T10:07:00+01:00' },
  )
}
