import { decimal } from '@/lib/domain/decimal'
import { measured } from '@/lib/domain/reading'
import { K, L1, QI, T1 } from './demo-people'
import { degC, mm, mpa } from './demo-readings'
import { at, secondsAfter } from './demo-time'
import type { FactScript } from './fact-script'
import type { PhotoBook } from './photo-drawing'
import { HARDNESS, MD_0044 } from './repair-figures'
import { scriptRepair } from './repair-script'
import {
  closeHardness,
  RESTRICTIONS,
  recordChecklist,
  recordHardness,
  recordTest,
  stepCure,
  stepFinished,
  stepHandover,
} from './steps-after'
import { type OnRepair, openRepair, stepAssessment, stepInstruments, stepMaterials, stepPermit } from './steps-before'
import { stepFillerCured, stepFillerMix, stepFillerPlaced, stepPreWrap } from './steps-filler'
import { laterNotices, stepNotices } from './steps-notices'
import { closeClimate, recordClimate, stepCleanliness, stepProfile, stepWatch } from './steps-surface'
import { probeSeries } from './steps-wrap'

const DAY = '05-14'

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

function stepPlugPlateBand({ hand }: OnRepair): void {
  const hard = at(DAY, '09:34')
  hand.photo('08', at(DAY, '09:01'), T1, 'before-arrest', 'Leak before, wet', {
    kind: 'pipe',
    shows: 'wet',
    clock: '3',
    note: 'before',
  })
  hand.record('08', hard, T1, {
    type: 'arrest',
    pressureThen: mpa('0.30'),
    leftInside: 'yes',
    placedBy: T1,
    arrest: {
      method: 'plug, plate and band',
      girths: [mm('359.0'), mm('359.2')],
      bandBatch: 'batch:SB-77',
      bandThickness: mm('0.7'),
      bandCut: mm('425'),
      bandTail: mm('60'),
      bandBuild: mm('0.5'),
      plateThickness: mm('0.5'),
      plateSize: '40 × 40 mm',
      puttyBatch: 'batch:PS-0419',
      puttyUsed: measured('500', 'mm3'),
      kneadStart: at(DAY, '09:02:10'),
      kneadEnd: at(DAY, '09:05:30'),
      oneColour: 'yes',
      ambient: degC('18.2'),
      pressedAt: at(DAY, '09:06'),
      bandTightAt: at(DAY, '09:08'),
      judgedHardAt: hard,
      overHole: 'yes',
      surplusCut: 'yes',
      nonSparkingAsked: 'yes',
      nonSparkingTools: 'yes',
    },
  })
  hand.photo('08', secondsAfter(hard, 10), T1, 'after-arrest', 'Plate and band tight, dry', {
    kind: 'pipe',
    shows: 'dry',
    clock: '3',
    note: 'band',
  })
  hand.write('material-used', secondsAfter(hard, 12), T1, {
    point: '08',
    attempt: 1,
    batch: 'batch:PS-0419',
    amount: '1 pcs',
  })
  hand.write('material-used', secondsAfter(hard, 14), T1, {
    point: '08',
    attempt: 1,
    batch: 'batch:SB-77',
    amount: '1 sets',
  })
  hand.close('08', at(DAY, '09:34:20'), {
    signs: [
      [T1, 'performed'],
      [L1, 'checked'],
    ],
    submittedBy: T1,
    releases: [['crew', L1]],
  })
}

type Roll = { rollNo: number; soak: string; seconds: string; from: string; to: string }
const ROLLS: Roll[] = [
  { rollNo: 1, soak: '11:32:05', seconds: '24', from: '11:32:40', to: '11:35:00' },
  { rollNo: 2, soak: '11:35:40', seconds: '26', from: '11:36:15', to: '11:38:25' },
]

function stepTape({ hand }: OnRepair): void {
  for (const { rollNo, soak, seconds, from, to } of ROLLS) {
    hand.record('14', at(DAY, to), T1, {
      type: 'tape-roll',
      rollNo,
      batch: 'batch:WT-2206',
      sealedUntilUse: 'yes',
      soakStart: at(DAY, soak),
      soakSeconds: measured(seconds, 's'),
      water: degC('17'),
      wrapStart: at(DAY, from),
      wrapEnd: at(DAY, to),
      surface: degC('18.6'),
      wrappedBy: T1,
      tensionKept: 'yes',
      usedUp: 'yes',
      squeezed: 'yes',
      noGap: 'yes',
      instrument: 'instrument:ST-04',
    })
  }
  const measuredAt = at(DAY, '11:40')
  hand.record('14', measuredAt, QI, {
    type: 'tape-wrap',
    tapeWidth: mm('75'),
    pitches: ['32', '32', '32', '32'].map(mm),
    passes: 4,
    startBeforeLeak: mm('152'),
    endAfterLeak: mm('152'),
    measuredAt,
    measuredBy: QI,
  })
  for (const [person, clock] of [
    [T1, '11:40:05'],
    [L1, '11:40:10'],
  ] as const) {
    hand.record('14', at(DAY, clock), person, {
      type: 'ply-count',
      plies: measured('8', 'plies'),
      countedBy: person,
      countedAt: at(DAY, clock),
    })
  }
  hand.photo('14', secondsAfter(measuredAt, 20), QI, 'roll-at-start', 'Pack of roll 2 at its start', {
    kind: 'package',
    colour: 'MD-0044 roll',
    lines: ['water-activated tape', 'WT-2206', 'roll 2', '75 mm x 7.5 m'],
  })
  hand.photo('14', secondsAfter(measuredAt, 40), QI, 'end-joint', 'End of the wrap, 152 mm after the leak', {
    kind: 'pipe',
    shows: 'joint',
    clock: '12',
    note: '152 mm',
  })
  hand.photo('14', secondsAfter(measuredAt, 55), QI, 'last-ply', 'Last pass squeezed', {
    kind: 'pipe',
    shows: 'film',
    clock: '3',
    note: 'pass 4',
  })
  hand.close('14', at(DAY, '11:42'), {
    signs: [
      [T1, 'performed'],
      [L1, 'checked'],
      [QI, 'checked'],
      [K, 'witnessed'],
    ],
    submittedBy: T1,
    releases: [
      ['crew', L1],
      ['inspector', QI],
    ],
  })
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
