import { measured } from '@/lib/domain/reading'
import { COMPLETIONS } from './completions'
import { E, L1, QI } from './demo-people'
import { chalkGrid, degC, gridReadings, mm, mpa } from './demo-readings'
import { at, secondsAfter } from './demo-time'
import { designParts } from './design-parts'
import type { RepairFigures } from './repair-figures'
import type { RepairHand } from './repair-script'

export type CompletedNumber = keyof typeof COMPLETIONS

/** A repair of the demo on its way through the plan: given figures, completions and the hand that writes. */
export type OnRepair = { hand: RepairHand; figures: RepairFigures; number: CompletedNumber }

/** Open the repair and give notice of every witness and hold point of the client's representative. */
export function openRepair({ hand, figures, number }: OnRepair): void {
  const { assessed } = COMPLETIONS[number]
  hand.write('repair-opened', at(assessed.day, '09:30'), QI, {
    number,
    project: 'project:QDM-SHAFT-2',
    line: figures.line,
    lineTitle: figures.lineTitle,
    specification: figures.specification,
    plan: figures.plan,
    datum: figures.datum,
    stationFromDatum: decimalOf(figures.stationFromDatum),
    clock: figures.clock,
    clockView: 'looking downstream',
    flow: 'station counts with the flow',
    geometry: 'straight',
    arrest: figures.arrest,
    wrap: figures.wrap,
    contract: 'QDM-2026-11',
    className: 'class 2',
  })
}

function decimalOf(text: string) {
  const { digits, scale } = mm(text)
  return { digits, scale }
}

/** Point 01: as found and as designed. */
export function stepAssessment({ hand, figures, number }: OnRepair): void {
  const { assessed } = COMPLETIONS[number]
  const { envelope } = assessed
  const measuredAt = at(assessed.day, assessed.measuredAt)
  hand.record('01', measuredAt, QI, {
    type: 'defect',
    defectKind: 'through-wall',
    holeAxial: mm(figures.hole[0]),
    holeHoop: mm(figures.hole[1]),
    defectLength: mm(figures.defectLength),
    clock: figures.clock,
    grid: chalkGrid(figures.stations),
    wall: gridReadings(figures.wallGrid, 'mm'),
    diameters: assessed.diameters.map(mm),
    ...(number === 'MD-0044' ? { girths: [mm('359.0'), mm('359.2')] } : {}),
    nominalWall: mm(figures.wall),
    material: 'carbon steel',
    medium: 'mine water',
    operatingPressure: mpa(assessed.operating),
    designPressure: mpa(figures.designPressure),
    minTemp: degC(assessed.minTemp),
    maxTemp: degC(figures.maxTemp),
    cause: 'internal corrosion',
    wantedLife: measured(figures.lifeYears, 'yr'),
    instrument: 'instrument:UT-02',
  })
  hand.photo(
    '01',
    secondsAfter(measuredAt, 300),
    QI,
    'defect-with-scale',
    `Hole ${figures.hole[0]} × ${figures.hole[1]} mm at ${figures.clock} o’clock`,
    { kind: 'pipe', shows: 'hole', clock: figures.clock, note: `${figures.hole[0]} x ${figures.hole[1]} mm` },
  )
  hand.photo('01', secondsAfter(measuredAt, 360), QI, 'wider-shot', `Line ${figures.line} at ${figures.datum}`, {
    kind: 'pipe',
    shows: 'wide',
    clock: figures.clock,
    note: figures.datum,
  })
  hand.record('01', at(assessed.day, assessed.designedAt), E, {
    type: 'design',
    sheetNo: `DS-${number.slice(3)}`,
    revision: 0,
    designDiameter: mm(figures.diameter),
    designWall: mm(figures.wall),
    designPressure: mpa(figures.designPressure),
    designTemp: degC(figures.maxTemp),
    plies: measured(figures.plies, 'plies'),
    minThickness: mm(figures.minThickness),
    overlapEachSide: mm(figures.overlap),
    taper: mm(figures.taper),
    totalLength: mm(figures.totalLength),
    testPressure: mpa(figures.testPressure),
    lifeYears: measured(figures.lifeYears, 'yr'),
    firstInspectionOn: figures.firstInspection,
    envelope: {
      holeAxialMax: mm(envelope.hole),
      holeHoopMax: mm(envelope.hole),
      minWallAtBandEdge: mm(envelope.edge),
      diameterMin: mm(envelope.from),
      diameterMax: mm(envelope.to),
    },
    ...designParts(figures),
    basis:
      'Ec 24 000 MPa, Ea 18 000 MPa, G 3 400 MPa, nu 0.18, strain 0.0018, gamma 150 J/m2, service factor 0.333. The chosen values are the engineer’s, for handling and an even ply count, and not below the computed minimum.',
  })
  hand.close('01', at(assessed.day, assessed.closedAt), {
    signs: [
      [QI, 'measured'],
      [E, 'approved'],
    ],
    submittedBy: QI,
    releases: [
      ['inspector', QI],
      ['engineer', E],
    ],
  })
}

/** Point 02: permit. */
export function stepPermit({ hand, figures, number }: OnRepair): void {
  const { permit } = COMPLETIONS[number]
  const seen = at(figures.day, permit.at)
  hand.record('02', seen, L1, {
    type: 'permit',
    permitNo: permit.no,
    validFrom: at(...permit.from),
    validTo: at(...permit.to),
    areaAuthority: 'Shaft 2 control',
    state: 'live',
    pressureAtStart: mpa(permit.pressure),
    gasTest: permit.gasTest,
    sparkRestricted: permit.sparks,
  })
  hand.photo('02', secondsAfter(seen, 60), L1, 'permit-board', `Permit ${permit.no}`, {
    kind: 'board',
    title: 'PERMIT TO WORK',
    lines: [
      permit.no,
      `valid ${permit.from[1]} to ${permit.to[1]}`,
      `gas test ${permit.gasTest}`,
      `pressure ${permit.pressure} MPa`,
    ],
  })
  hand.close('02', at(figures.day, permit.closedAt), {
    signs: [[L1, 'checked']],
    submittedBy: L1,
    releases: [['crew', L1]],
  })
}
