import { measured } from '@/lib/domain/reading'
import type { Moment } from '@/lib/domain/time'
import { K, QI } from './demo-people'
import { degC, mpa } from './demo-readings'
import { at, secondsAfter } from './demo-time'
import type { OnRepair } from './steps-before'

/** The pressure test as read; `rows` are clock and MPa, steel at its first and last reading. */
export function recordTest(
  { hand, figures }: OnRepair,
  day: string,
  rows: [clock: string, pressure: string][],
  steel: string,
): Moment {
  const times = rows.map(([clock]) => at(day, clock))
  const ended = times.at(-1) ?? at(day, '00:00')
  hand.record('18', ended, QI, {
    type: 'pressure-test',
    kind: 'pressure test',
    medium: 'mine water',
    gauges: ['instrument:PG-21', 'instrument:PG-22'],
    thermometer: 'instrument:ST-04',
    noLeak: 'yes',
    readings: rows.map(([clock, pressure], step) => ({
      at: at(day, clock),
      pressure: mpa(pressure),
      ...(step === 0 || step === rows.length - 1 ? { steel: degC(steel) } : {}),
    })),
  })
  for (const [clock, pressure] of [rows[0], rows.at(-1)].filter((row) => row !== undefined)) {
    hand.photo(
      '18',
      secondsAfter(ended, clock === rows[0]?.[0] ? 30 : 45),
      QI,
      'gauge-start-end',
      `PG-21 at ${clock}: ${pressure} MPa`,
      { kind: 'dial', title: 'PG-21', value: Number(pressure), from: 0, to: 2.5, unit: 'MPa', note: clock },
    )
  }
  hand.photo('18', secondsAfter(ended, 60), QI, 'repair-dry', 'Repair dry under test', {
    kind: 'pipe',
    shows: 'tested',
    clock: figures.clock,
    note: `${figures.testPressure} MPa`,
  })
  return ended
}

/** Point 19's checklist with its photo. */
export function recordChecklist(
  { hand }: OnRepair,
  when: Moment,
  lifeYears: string,
  nextInspectionOn: string,
  label: string,
  concession?: string,
): void {
  hand.record('19', when, QI, {
    type: 'checklist',
    labelFixed: 'yes',
    lifeYears: measured(lifeYears, 'yr'),
    nextInspectionOn,
    classText: 'class 2',
    lines: [
      { text: 'All points released and still valid', answer: 'yes' },
      { text: 'As built against design looked through', answer: 'yes' },
      concession
        ? { text: 'Nonconformances closed or conceded', answer: 'yes', reason: concession }
        : { text: 'Nonconformances closed or conceded', answer: 'not applicable', reason: 'None was raised.' },
    ],
  })
  hand.photo('19', secondsAfter(when, 40), QI, 'label-fixed', `Label ${label} fixed`, {
    kind: 'pipe',
    shows: 'label',
    clock: '12',
    note: label,
  })
}

/** Standing restrictions on a finished wrap. */
export const RESTRICTIONS = ['No welding, grinding, blasting, clamping or drilling on or close to the wrap.']

/** Point 20: label and handover after the dossier's issue. */
export function stepHandover({ hand, number }: OnRepair, handedAt: Moment): void {
  const label = `LBL-${number.slice(3)}`
  hand.record('20', handedAt, QI, {
    type: 'handover',
    labelNo: label,
    labelFixed: 'yes',
    labelReadable: 'yes',
    registerNo: `RR-${number.slice(3)}`,
    restrictions: RESTRICTIONS,
    dossierRevision: 0,
    handedAt,
    receivedBy: 'Ludmila Stannard',
  })
  hand.photo('20', secondsAfter(handedAt, 60), QI, 'label-readable', `Label ${label} readable in place`, {
    kind: 'pipe',
    shows: 'label',
    clock: '3',
    note: label,
  })
  hand.close('20', secondsAfter(handedAt, 300), {
    signs: [
      [QI, 'checked'],
      [K, 'accepted'],
    ],
    submittedBy: QI,
    releases: [['client', K]],
  })
}
