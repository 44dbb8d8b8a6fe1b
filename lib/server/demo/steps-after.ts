import type { Moment } from '@/lib/domain/time'
import { AS_BUILT } from './completions'
import { E, K, L1, QI } from './demo-people'
import { chalkGrid, degC, gridReadings, mm } from './demo-readings'
import { secondsAfter } from './demo-time'
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
