import { L1, T1, T2 } from './demo-people'
import type { FactScript } from './fact-script'
import type { PhotoBook } from './photo-drawing'
import { scriptCure0042 } from './repair-0042-cure'
import { scriptTests0042 } from './repair-0042-tests'
import { MD_0042 } from './repair-figures'
import { scriptRepair } from './repair-script'
import { stepPlug, stepWatch } from './steps-arrest'
import { openRepair, stepAssessment, stepPermit } from './steps-before'
import { stepFillerCured, stepFillerMix, stepFillerPlaced, stepPreWrap } from './steps-filler'
import { stepInstruments, USUAL_PERSONS } from './steps-instruments'
import { stepMaterials } from './steps-materials'
import { laterNotices, stepNotices } from './steps-notices'
import { closeClimate, recordClimate, stepCleanliness, stepProfile } from './steps-surface'
import { closeLayUp, layUp, recordPrimer } from './steps-wrap'

/** MD-0042: laid up on 2026-05-19, two failed hardness tests, post-cure, accepted under concession on 05-22. NCR-0007 is written between its acts. */
export function scriptRepair0042(script: FactScript, photos: PhotoBook): void {
  const hand = scriptRepair(script, 'MD-0042', photos)
  const on = { hand, figures: MD_0042, number: 'MD-0042' } as const
  openRepair(on)
  stepAssessment(on)
  stepNotices(on, [
    ['05', '08:41'],
    ['09', '09:16'],
    ['13', '11:12'],
    ['14', '11:18'],
  ])
  laterNotices(on, '05-18')
  stepPermit(on)
  stepMaterials(on, ['RS-884', 'HB-2291', 'FP-121', 'PR-357', 'FB-0616'])
  stepInstruments(
    on,
    ['TH-11', 'SP-07', 'ST-04', 'HD-03', 'HD-05', 'LG-06', 'WB-09', 'PG-21', 'PG-22', 'SM-02', 'CL-08'],
    { persons: [...USUAL_PERSONS, { person: T2, qualification: 'Q-131', task: 'applicator' }] },
  )
  stepCleanliness(on)
  stepProfile(on)
  recordClimate(
    on,
    '07',
    {
      at: '09:00',
      air: '15.9',
      humidity: '78',
      steel: [
        ['3', '16.4'],
        ['6', '15.3'],
      ],
    },
    'TH-11',
    { photo: true },
  )
  closeClimate(on)
  stepPlug(on, '09:10', '0.40')
  stepWatch(on, '09:16', '09:38', '0.40')
  stepFillerMix(on)
  stepFillerPlaced(on)
  recordClimate(
    on,
    '07',
    {
      at: '10:55',
      air: '15.9',
      humidity: '78',
      steel: [
        ['3', '16.4'],
        ['6', '15.3'],
      ],
    },
    'TH-11',
  )
  closeClimate(on, '10:57')
  stepFillerCured(on, '69 68 70')
  stepPreWrap(on, '11:12', 'TH-11')
  recordPrimer(on)
  layUp(on, [
    {
      no: 'M1',
      resin: 'RS-884',
      hardener: 'HB-2291',
      partA: '760',
      partB: '289',
      temp: '15.8',
      mixedAt: '11:18',
      usedBy: '11:37',
      mixedBy: T1,
    },
    {
      no: 'M2',
      resin: 'RS-884',
      hardener: 'HB-2291',
      partA: '760',
      partB: '288',
      temp: '15.8',
      mixedAt: '11:35',
      usedBy: '11:56',
      mixedBy: T2,
    },
  ])
  closeLayUp(
    on,
    [
      [T1, '11:57:20'],
      [L1, '11:57:40'],
    ],
    '11:58:26',
    [T1, T2],
  )
  scriptCure0042(script, on)
  scriptTests0042(on)
}
