import type { FactOf } from '@/lib/domain/facts/fact-kinds'
import { L1, QI, T1 } from './demo-people'
import { grams, mpa } from './demo-readings'
import { at } from './demo-time'
import type { FactScript } from './fact-script'
import { scriptNcr0009 } from './ncr-0008-0009'
import type { PhotoBook } from './photo-drawing'
import { MD_0043 } from './repair-figures'
import { scriptRepair } from './repair-script'
import { stepPlug, stepWatch } from './steps-arrest'
import { type OnRepair, openRepair, stepAssessment, stepPermit } from './steps-before'
import { recordFillerThickness, stepFillerMix, stepFillerPlaced } from './steps-filler'
import { stepInstruments } from './steps-instruments'
import { stepMaterials } from './steps-materials'
import { stepNotices } from './steps-notices'
import { closeClimate, recordClimate, stepCleanliness, stepProfile } from './steps-surface'
import { mixRecord } from './steps-wrap'

const DAY = '05-27'
/** When T1's phone came out of the gallery and sent what it held. */
const PHONE_SENT = at(DAY, '13:20')

/** MD-0043, attempt 1 of 2026-05-27: weep, climate lost, window lapsed underground, resin mixed all the same, stopped; NCR-0009. */
export function scriptRepair0043(script: FactScript, photos: PhotoBook): void {
  const hand = scriptRepair(script, 'MD-0043', photos)
  const on = { hand, figures: MD_0043, number: 'MD-0043' } as const
  openRepair(on)
  stepAssessment(on)
  stepNotices(on, [
    ['05', '09:02'],
    ['09', '09:47'],
  ])
  stepPermit(on)
  stepMaterials(on, ['RS-901', 'HB-2291', 'FP-118', 'PR-357'])
  stepInstruments(on, ['TH-12', 'SP-07', 'ST-04', 'HD-05', 'LG-06', 'WB-09', 'PG-21', 'PG-22', 'SM-02', 'CL-08'], {
    refused: [{ id: 'TH-11', reason: 'Certificate C-3188 ended on 2026-05-24.' }],
  })
  stepCleanliness(on, { repair: 'MD-0042', takenAt: at('05-19', '08:42:30'), note: '190 + 190 mm' })
  stepProfile(on)
  recordClimate(on, '07', { at: '09:18', air: '17.6', humidity: '74', steel: [['6', '16.9']] }, 'TH-12', {
    photo: true,
  })
  closeClimate(on)
  stepPlug(on, '09:40', '0.35')
  const fallen = stepWatch(on, '09:47', '10:09', '0.35', L1)
  fallen.push(...stepFillerMix(on), ...stepFillerPlaced(on))
  recordFillerThickness(on)
  weepAndStop(on, fallen)
  const conflict = heldOnPhone(on)
  scriptSync(script, conflict)
  scriptNcr0009(script, { evidence: conflict })
}

/** 11:05 to 12:58 as the lead's tablet has it. The releases of 09 to 11 are withdrawn by those who gave them. */
function weepAndStop(on: OnRepair, fallen: FactOf<'released'>[]): void {
  const { hand } = on
  const weep = hand.record('11', at(DAY, '11:05'), L1, { type: 'weep', seenAt: at(DAY, '11:05'), place: 'C-6' })
  hand.photo('11', at(DAY, '11:05:30'), L1, null, 'Weep at C-6', {
    kind: 'pipe',
    shows: 'weep',
    clock: '6',
    note: 'C-6',
  })
  fallen.forEach((release, step) => {
    hand.write('release-withdrawn', at(DAY, `11:06:${String(step * 8).padStart(2, '0')}`), release.observedBy, {
      release: release.id,
      cause: 'weep at C-6',
      reason: 'Arrest no longer dry: weep seen through the filler at 11:05.',
      followsFrom: weep.id,
    })
  })
  recordClimate(on, '07', { at: '11:15', air: '18.2', humidity: '81', steel: [['6', '16.8']] }, 'TH-12', {
    change: 'mist from the shaft',
  })
  hand.record('11', at(DAY, '11:20'), L1, {
    type: 'stop',
    what: 'stopped',
    reason: 'Weep at C-6 and dew margin lost: filler work stopped.',
  })
}

/** The two records of the watch after re-arrest, and what T1 did below ground while the window lapsed; the phone's facts are received at 13:20. */
function heldOnPhone(on: OnRepair): string[] {
  const { hand } = on
  const drip = hand.record('09', at(DAY, '12:06'), L1, {
    type: 'arrest-watch',
    startedAt: at(DAY, '12:00'),
    pressure: mpa('0.35'),
    wipeDry: 'no',
    dripSeenAt: at(DAY, '12:06'),
    freeOfFlashRust: 'yes',
    watchedBy: L1,
    remark: 'Drip seen 12:06 at C-6.',
  })
  recordClimate(on, '07', { at: '12:50', air: '18.0', humidity: '86', steel: [['6', '16.5']] }, 'TH-12')
  hand.record('14', at(DAY, '12:58'), L1, {
    type: 'stop',
    what: 'stopped',
    reason: 'Preparation window ended at 12:35; resin mixed and primer brushed after it.',
  })
  hand.write('repair-held', at(DAY, '13:06'), L1, {
    state: 'on hold',
    reason: 'Window lapsed and arrest in doubt: NCR-0009.',
  })
  const dry = hand.record(
    '09',
    at(DAY, '12:14'),
    T1,
    {
      type: 'arrest-watch',
      startedAt: at(DAY, '11:52'),
      endedAt: at(DAY, '12:14'),
      pressure: mpa('0.35'),
      wipeDry: 'yes',
      freeOfFlashRust: 'yes',
      watchedBy: T1,
      remark: 'Re-arrest: plug driven again, dry 11:52 to 12:14.',
    },
    { receivedAt: PHONE_SENT },
  )
  const mix = mixRecord(DAY, {
    no: 'M1',
    resin: 'RS-901',
    hardener: 'HB-2291',
    partA: '720',
    partB: '274',
    temp: '17.8',
    mixedAt: '12:52',
    usedBy: '12:58',
    mixedBy: T1,
  })
  hand.record(
    '14',
    at(DAY, '12:52'),
    T1,
    mix.type === 'resin-mix' ? { ...mix, scrapped: 'Scrapped in the bucket when the work was stopped at 12:58.' } : mix,
    { enteredAt: at(DAY, '13:02'), receivedAt: PHONE_SENT },
  )
  hand.record(
    '14',
    at(DAY, '12:55'),
    T1,
    {
      type: 'primer',
      batch: 'batch:PR-357',
      mass: grams('20'),
      brushedAt: at(DAY, '12:55'),
      brushedBy: T1,
      place: 'A-3',
    },
    { enteredAt: at(DAY, '13:03'), receivedAt: PHONE_SENT },
  )
  return [drip.id, dry.id]
}

/** At the sync the two watches meet, and the inspector's tablet is found 7 min fast. */
function scriptSync(script: FactScript, conflict: string[]): void {
  script.write({
    stream: 'device:phone-akande',
    kind: 'conflict-noted',
    at: at(DAY, '13:20:10'),
    by: T1,
    body: {
      repair: 'repair:MD-0043',
      facts: conflict,
      remark: 'Re-arrest dry 11:52 to 12:14 on the phone; drip seen 12:06 on the tablet.',
    },
  })
  script.write({
    stream: 'device:tablet-wrenfield',
    kind: 'clock-checked',
    at: at(DAY, '13:24'),
    by: QI,
    body: { offsetMs: 420_000, remark: 'Tablet 7 min fast at sync; observed times left as keyed.' },
  })
}
