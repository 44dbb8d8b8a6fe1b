import { L1, QI, T1 } from './demo-people'
import { at, secondsAfter } from './demo-time'
import type { FactScript } from './fact-script'
import type { PhotoBook } from './photo-drawing'
import { curedAndTested, type On0041 } from './repair-0041-cure'
import { MD_0041 } from './repair-figures'
import { scriptRepair } from './repair-script'
import { stepPlug, stepWatch } from './steps-arrest'
import { openRepair, stepAssessment, stepPermit } from './steps-before'
import { stepFillerCured, stepFillerMix, stepFillerPlaced, stepPreWrap } from './steps-filler'
import { stepInstruments } from './steps-instruments'
import { stepMaterials } from './steps-materials'
import { laterNotices, stepNotices } from './steps-notices'
import { closeClimate, recordClimate, stepCleanliness, stepProfile } from './steps-surface'
import { closeLayUp, layUp, plyRecord, recordPrimer } from './steps-wrap'

/** MD-0041, a clean pass: 2026-05-12 and 13, handed over 05-15. */
export function scriptRepair0041(script: FactScript, photos: PhotoBook): void {
  const hand = scriptRepair(script, 'MD-0041', photos)
  const on = { hand, figures: MD_0041, number: 'MD-0041' } as const
  openRepair(on)
  stepAssessment(on)
  stepNotices(on, [
    ['05', '09:04'],
    ['09', '09:36'],
    ['13', '11:36'],
    ['14', '11:40'],
  ])
  laterNotices(on, '05-11')
  stepPermit(on)
  stepMaterials(
    on,
    ['RS-884', 'HB-2270', 'FP-118', 'PR-357', 'FB-0616'],
    [{ batch: 'FP-097', reason: 'Expired on 2026-04-30, before the day of use.' }],
  )
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
  stepProfile(on)
  recordClimate(on, '07', { at: '09:22', air: '19.4', humidity: '66', steel: [['6', '17.8']] }, 'TH-11', {
    photo: true,
  })
  closeClimate(on)
  stepPlug(on, '09:30', '0.40')
  stepWatch(on, '09:36', '09:58', '0.40')
  stepFillerMix(on)
  stepFillerPlaced(on)
  recordClimate(on, '07', { at: '10:20', air: '20.1', humidity: '64', steel: [['6', '18.3']] }, 'TH-11')
  closeClimate(on, '10:22')
  stepFillerCured(on, '71 72 70')
  stepPreWrap(on, '11:36', 'TH-11')
  recordPrimer(on)
  layUp(
    on,
    [
      {
        no: 'M1',
        resin: 'RS-884',
        hardener: 'HB-2270',
        partA: '870',
        partB: '331',
        temp: '20.3',
        mixedAt: '11:40',
        usedBy: '12:00',
        mixedBy: T1,
      },
      {
        no: 'M2',
        resin: 'RS-884',
        hardener: 'HB-2270',
        partA: '870',
        partB: '330',
        temp: '20.4',
        mixedAt: '11:57',
        usedBy: '12:19',
        mixedBy: T1,
      },
    ],
    6,
  )
  closeLayUp(
    on,
    [
      [T1, '12:23'],
      [L1, '12:24'],
    ],
    '12:27',
    [T1],
  )
  lateSixthPly(on)
  curedAndTested(on)
}

/** Ply 6 was kept on the paper tally and entered the next morning; its signatures follow its entry. */
function lateSixthPly(on: On0041): void {
  const { hand } = on
  const entered = at('05-13', '06:50')
  const fact = hand.record(
    '14',
    at('05-12', '12:00'),
    T1,
    plyRecord(on, 6).record,
    {
      enteredAt: entered,
      late: { reason: 'Phone in its pouch with both gloves wet; kept on the paper tally.', source: 'paper tally' },
    },
    { keeper: 'Maren Osterfalk', place: 'site file, crew cabin' },
  )
  hand.checkPaper(secondsAfter(entered, 60), L1, fact)
  hand.sign('14', secondsAfter(entered, 120), T1, 'performed', { covers: [fact] })
  hand.sign('14', secondsAfter(entered, 180), L1, 'checked', { covers: [fact] })
  hand.sign('14', secondsAfter(entered, 240), QI, 'checked', { covers: [fact] })
}
