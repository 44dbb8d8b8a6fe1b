import { decimal } from '@/lib/domain/decimal'
import { K, L1, QI } from './demo-people'
import { mm } from './demo-readings'
import { at } from './demo-time'
import { HARDNESS } from './repair-figures'
import { RESTRICTIONS, recordChecklist, recordTest, stepHandover } from './steps-acceptance'
import { closeHardness, recordHardness, stepCure, stepFinished } from './steps-after'
import { type plyRecord, probeSeries } from './steps-wrap'

/** The repair MD-0041 on its way. */
export type On0041 = Parameters<typeof plyRecord>[0] & { number: 'MD-0041' }

/** Cure, hardness, dimensions, pressure test, acceptance and handover of MD-0041. */
export function curedAndTested(on: On0041): void {
  const { hand } = on
  const cure = { startedAt: at('05-12', '12:30'), endedAt: at('05-13', '07:10') }
  stepCure(
    on,
    {
      ...cure,
      logger: 'instrument:CL-08',
      heatSource: 'none',
      postCure: 'no',
      probes: [
        { place: '6 o’clock', clock: '6', series: probeSeries('MD-0041 6', cure.startedAt, cure.endedAt) },
        { place: '12 o’clock', clock: '12', series: probeSeries('MD-0041 12', cure.startedAt, cure.endedAt) },
      ],
    },
    at('05-13', '07:13'),
  )
  recordHardness(on, at('05-13', '07:25'), HARDNESS['MD-0041'], '17.6')
  closeHardness(on, at('05-13', '07:40'))
  stepFinished(on, { thickness: at('05-13', '07:50'), visual: at('05-13', '08:05'), closed: at('05-13', '08:12') }, [
    { kind: 'resin run', place: 'B-9', size: mm('8') },
  ])
  recordTest(
    on,
    '05-13',
    [
      ['09:30', '1.492'],
      ['09:55', '1.490'],
      ['10:20', '1.489'],
      ['10:45', '1.489'],
    ],
    '16.8',
  )
  hand.close('18', at('05-13', '10:50'), {
    signs: [
      [QI, 'measured'],
      [K, 'witnessed'],
    ],
    submittedBy: QI,
    releases: [
      ['crew', L1],
      ['inspector', QI],
      ['client', K],
    ],
  })
  recordChecklist(on, at('05-13', '11:12'), '10', '2027-05-13', 'LBL-0041')
  hand.close('19', at('05-13', '11:18'), {
    signs: [
      [QI, 'accepted'],
      [K, 'accepted'],
    ],
    submittedBy: QI,
    releases: [
      ['crew', L1],
      ['inspector', QI],
      ['client', K],
    ],
  })
  hand.write('accepted', at('05-13', '11:20'), QI, {
    kind: 'accepted',
    lifeYears: decimal('10'),
    lifeFrom: '2026-05-13',
    nextInspectionOn: '2027-05-13',
    restrictions: RESTRICTIONS,
    conditions: [],
    heads: hand.heads(),
  })
  stepHandover(on, at('05-15', '16:00'))
}
