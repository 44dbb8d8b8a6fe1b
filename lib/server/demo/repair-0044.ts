import { decimal } from '@/lib/domain/decimal'
import { K, L1, QI } from './demo-people'
import { at } from './demo-time'
import type { FactScript } from './fact-script'
import type { PhotoBook } from './photo-drawing'
import { DAY, stepPlugPlateBand, stepTape } from './repair-0044-arrest-and-tape'
import { HARDNESS, MD_0044 } from './repair-figures'
import { scriptRepair } from './repair-script'
import { RESTRICTIONS, recordChecklist, recordTest, stepHandover } from './steps-acceptance'
import { closeHardness, recordHardness, stepCure, stepFinished } from './steps-after'
import { stepWatch } from './steps-arrest'
import { type OnRepair, openRepair, stepAssessment, stepPermit } from './steps-before'
import { stepFillerCured, stepFillerMix, stepFillerPlaced, stepPreWrap } from './steps-filler'
import { stepInstruments } from './steps-instruments'
import { stepMaterials } from './steps-materials'
import { laterNotices, stepNotices } from './steps-notices'
import { closeClimate, recordClimate, stepCleanliness, stepProfile } from './steps-surface'
import { probeSeries } from './steps-wrap'

/** MD-0044, a clean pass with plug, plate and band under water-activated tape: 2026-05-14, handed over 05-16. */
export function scriptRepair0044(script: FactScript, photos: PhotoBook): void {
  const hand = scriptRepair(script, 'MD-0044', photos)
  const on = { hand, figures: MD_0044, number: 'MD-0044' } as const
  openRepair(on)
  stepAssessment(on)
  stepNotices(on, [
    ['05', '08:36'],
    ['09', '09:36'],
    ['13', '11:24'],
    ['14', '11:32'],
  ])
  laterNotices(on, '05-12')
  stepPermit(on)
  stepMaterials(on, ['WT-2206', 'PS-0419', 'SB-77', 'FP-118'])
  stepInstruments(on, [
    'SP-07',
    'TH-11',
    'ST-04',
    'HD-03',
    'HD-05',
    'LG-06',
    'WB-09',
    'PG-21',
    'PG-22',
    'SM-02',
    'CL-08',
  ])
  stepCleanliness(on)
  recordClimate(on, '07', { at: '08:40', air: '18.9', humidity: '63', steel: [['3', '18.1']] }, 'TH-11', {
    photo: true,
  })
  stepProfile(on)
  closeClimate(on)
  stepPlugPlateBand(on)
  stepWatch(on, '09:36', '09:58', '0.30')
  stepFillerMix(on)
  stepFillerPlaced(on)
  recordClimate(on, '07', { at: '10:30', air: '19.2', humidity: '62', steel: [['3', '18.4']] }, 'TH-11')
  closeClimate(on, '10:32')
  stepFillerCured(on, '70 69 71')
  stepPreWrap(on, '11:24', 'TH-11')
  stepTape(on)
  curedAndTested(on)
}

function curedAndTested(on: OnRepair & { number: 'MD-0044' }): void {
  const { hand } = on
  const cure = { startedAt: at(DAY, '11:45'), endedAt: at(DAY, '14:00') }
  stepCure(
    on,
    {
      ...cure,
      logger: 'instrument:CL-08',
      heatSource: 'none',
      postCure: 'no',
      probes: [{ place: '3 o’clock', clock: '3', series: probeSeries('MD-0044 3', cure.startedAt, cure.endedAt) }],
    },
    at(DAY, '14:03'),
  )
  recordHardness(on, at(DAY, '14:10'), HARDNESS['MD-0044'], '18.5')
  closeHardness(on, at(DAY, '14:18'))
  stepFinished(on, { thickness: at(DAY, '14:25'), visual: at(DAY, '14:32'), closed: at(DAY, '14:36') })
  recordTest(
    on,
    DAY,
    [
      ['15:00', '0.668'],
      ['15:25', '0.667'],
      ['15:50', '0.667'],
      ['16:15', '0.666'],
    ],
    '18.4',
  )
  hand.close('18', at(DAY, '16:18'), {
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
  recordChecklist(on, at(DAY, '16:28'), '5', '2027-05-14', 'LBL-0044')
  hand.close('19', at(DAY, '16:36'), {
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
  hand.write('accepted', at(DAY, '16:40'), QI, {
    kind: 'accepted',
    lifeYears: decimal('5'),
    lifeFrom: '2026-05-14',
    nextInspectionOn: '2027-05-14',
    restrictions: RESTRICTIONS,
    conditions: [],
    heads: hand.heads(),
  })
  stepHandover(on, at('05-16', '14:00'))
}
