import { measured } from '@/lib/domain/reading'
import { K, L1, QI, T1 } from './demo-people'
import { degC, mm, mpa } from './demo-readings'
import { at, secondsAfter } from './demo-time'
import type { OnRepair } from './steps-before'

/** The one day of work on MD-0044. */
export const DAY = '05-14'

/** Point 08: plug of putty, plate and band. */
export function stepPlugPlateBand({ hand }: OnRepair): void {
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

/** Point 14: two rolls of water-activated tape, measured and counted. */
export function stepTape({ hand }: OnRepair): void {
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
