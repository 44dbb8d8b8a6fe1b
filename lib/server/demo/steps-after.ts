import { measured } from '@/lib/domain/reading'
import type { Moment } from '@/lib/domain/time'
import { AS_BUILT } from './completions'
import { E, K, L1, QI } from './demo-people'
import { chalkGrid, degC, gridReadings, mm, mpa } from './demo-readings'
import { at, secondsAfter } from './demo-time'
import type { BodyInput } from './fact-script'
import { THICKNESS } from './repair-figures'
import type { OnRepair } from './steps-before'

type Finished = OnRepair & { number: keyof typeof AS_BUILT }

/** Point 15: one cure record, signed; the point is monitored and reviewed, nobody holds it. */
export function stepCure(
  { hand }: OnRepair,
  cure: Omit<Extract<BodyInput<'recorded'>['record'], { type: 'cure' }>, 'type' | 'interrupted'>,
  closedAt: Moment,
  attempt = 1,
): void {
  hand.record('15', cure.endedAt, L1, { type: 'cure', interrupted: 'no', ...cure }, { attempt })
  const series = cure.probes[0]?.series.map((one) => one.reading.digits / 10 ** one.reading.scale) ?? []
  hand.photo(
    '15',
    secondsAfter(cure.endedAt, 60),
    L1,
    'logger-in-place',
    `Probe at ${cure.probes.map((probe) => probe.place).join(' and ')}`,
    { kind: 'logger', series, note: cure.probes[0]?.place ?? '' },
    { attempt },
  )
  hand.sign('15', closedAt, L1, 'measured', { attempt })
  hand.sign('15', secondsAfter(closedAt, 10), QI, 'reviewed', { attempt })
  hand.submit('15', secondsAfter(closedAt, 20), L1, attempt)
}

/** Point 16: the full grid read and photographed, one mark of each clock row; `keyed` where a value was keyed otherwise than read. Signing and deciding are the repair's own. */
export function recordHardness(
  { hand, figures }: OnRepair,
  takenAt: Moment,
  rows: Record<string, string>,
  temp: string,
  attempt = 1,
  keyed = rows,
) {
  const fact = hand.record(
    '16',
    takenAt,
    QI,
    {
      type: 'hardness',
      scale: 'ShoreD',
      grid: chalkGrid(figures.stations),
      readings: gridReadings(keyed, 'ShoreD'),
      takenAt,
      temp: degC(temp),
      instrument: 'instrument:HD-03',
    },
    { attempt },
  )
  for (const [step, clock] of ['12', '3', '6', '9'].entries()) {
    const value = rows[clock]?.split(' ')[2] ?? ''
    hand.photo(
      '16',
      secondsAfter(takenAt, 240 + step * 20),
      QI,
      'gauge-on-row',
      `HD-03 at C-${clock}`,
      { kind: 'dial', title: 'HD-03', value: Number(value), from: 0, to: 100, unit: 'Shore D', note: `C-${clock}` },
      { attempt },
    )
  }
  return fact
}

export function closeHardness({ hand }: OnRepair, closedAt: Moment, attempt = 1): void {
  hand.close('16', closedAt, {
    attempt,
    signs: [
      [QI, 'measured'],
      [K, 'witnessed'],
    ],
    submittedBy: QI,
    releases: [
      ['crew', L1],
      ['inspector', QI],
    ],
  })
}

type Findings = Extract<BodyInput<'recorded'>['record'], { type: 'visual' }>['findings']

/** Point 17: thickness, then looked at and tapped. */
export function stepFinished(
  { hand, figures, number }: Finished,
  times: { thickness: Moment; visual: Moment; closed: Moment },
  findings: Findings = [],
): void {
  const [totalLength, left, right] = AS_BUILT[number]
  hand.record('17', times.thickness, QI, {
    type: 'thickness',
    grid: chalkGrid(figures.stations),
    readings: gridReadings(THICKNESS[number], 'mm'),
    takenAt: times.thickness,
    instrument: 'instrument:LG-06',
  })
  hand.record('17', times.visual, QI, {
    type: 'visual',
    seenAt: times.visual,
    tapTested: 'yes',
    findings,
    noFindings: findings.length === 0 ? 'yes' : 'no',
    totalLength: mm(totalLength),
    taperLeft: mm(left),
    taperRight: mm(right),
  })
  for (const [step, clock] of ['12', '3', '6', '9'].entries()) {
    hand.photo(
      '17',
      secondsAfter(times.visual, 60 + step * 15),
      QI,
      'four-sides',
      `Finished wrap at ${clock} o’clock`,
      { kind: 'pipe', shows: 'side', clock, note: `${totalLength} mm` },
    )
  }
  hand.close('17', times.closed, {
    signs: [
      [QI, 'measured'],
      [K, 'witnessed'],
      [E, 'reviewed'],
    ],
    submittedBy: QI,
    releases: [
      ['crew', L1],
      ['inspector', QI],
    ],
  })
}

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
