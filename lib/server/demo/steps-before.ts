import { measured } from '@/lib/domain/reading'
import { COMPLETIONS } from './completions'
import { E, L1, QI, S, T1 } from './demo-people'
import { chalkGrid, degC, gridReadings, mm, mpa } from './demo-readings'
import { batchRow, instrumentRow } from './demo-store-tables'
import { at, secondsAfter } from './demo-time'
import type { BodyInput } from './fact-script'
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

/** Point 03: materials taken, and refused with a reason. */
export function stepMaterials(
  { hand, figures, number }: OnRepair,
  taken: string[],
  refused: { batch: string; reason: string }[] = [],
): void {
  const { materials } = COMPLETIONS[number]
  const seen = at(figures.day, materials.at)
  const line = (id: string): Omit<MaterialLine, 'decision'> => {
    const { role, label } = batchRow(id)
    return {
      batch: `batch:${id}`,
      role,
      packageState: 'sound',
      labelRead: label ? 'scanned' : 'typed',
      ...(label ? { labelText: label } : {}),
      certificateMatches: 'yes',
      systemQualified: 'yes',
      storedMin: degC('14.2'),
      storedMax: degC('21.6'),
    }
  }
  hand.record('03', seen, S, {
    type: 'materials',
    plannedUseOn: `2026-${figures.day}`,
    lines: [
      ...taken.map((id): MaterialLine => ({ ...line(id), decision: 'taken' })),
      ...refused.map(({ batch, reason }): MaterialLine => ({ ...line(batch), decision: 'refused', reason })),
    ],
  })
  const shown = batchRow(taken[0] ?? '')
  hand.photo('03', secondsAfter(seen, 90), S, 'package-label', `Label of ${shown.id}`, {
    kind: 'package',
    colour: number,
    lines: [shown.product, shown.id, shown.label ?? '', `expiry ${shown.expiresOn ?? 'none'}`],
  })
  hand.close('03', at(figures.day, materials.closedAt), {
    signs: [
      [S, 'performed'],
      [QI, 'witnessed'],
    ],
    submittedBy: S,
    releases: [['crew', L1]],
  })
}

type MaterialLine = Extract<BodyInput<'recorded'>['record'], { type: 'materials' }>['lines'][number]
type InstrumentLine = Extract<BodyInput<'recorded'>['record'], { type: 'instruments' }>['instruments'][number]
export type JobPerson = { person: string; qualification: string; task: 'applicator' | 'supervisor' | 'inspector' }
export const USUAL_PERSONS: JobPerson[] = [
  { person: T1, qualification: 'Q-118', task: 'applicator' },
  { person: L1, qualification: 'Q-064', task: 'supervisor' },
  { person: QI, qualification: 'I-022', task: 'inspector' },
]

/** Point 04: instruments with their check, and the persons on the job. The durometer's daily check is on a mid-scale block only. */
export function stepInstruments(
  { hand, figures, number }: OnRepair,
  taken: string[],
  { refused = [], persons = USUAL_PERSONS }: { refused?: { id: string; reason: string }[]; persons?: JobPerson[] } = {},
): void {
  const { instruments } = COMPLETIONS[number]
  const seen = at(figures.day, instruments.at)
  const line = (id: string): Omit<InstrumentLine, 'decision'> => {
    const { certificate, unit, reference, kind } = instrumentRow(id)
    return {
      instrument: `instrument:${id}`,
      certificate,
      reference: measured(reference[0], unit),
      read: measured(reference[1], unit),
      tolerance: measured(reference[2], unit),
      coverage: kind === 'durometer' ? 'mid scale' : 'full scale',
      when: 'before',
    }
  }
  hand.record('04', seen, QI, {
    type: 'instruments',
    persons,
    instruments: [
      ...taken.map((id): InstrumentLine => ({ ...line(id), decision: 'taken' })),
      ...refused.map(
        ({ id, reason }): InstrumentLine => ({
          instrument: `instrument:${id}`,
          certificate: instrumentRow(id).certificate,
          coverage: 'none',
          when: 'before',
          decision: 'refused',
          reason,
        }),
      ),
    ],
  })
  const shown = instrumentRow(taken[0] ?? '')
  hand.photo('04', secondsAfter(seen, 120), QI, 'id-plate', `${shown.id} on its reference piece`, {
    kind: 'digital',
    title: shown.id,
    lines: [shown.reference[1], shown.unit],
    note: `reference ${shown.reference[0]}`,
  })
  hand.close('04', at(figures.day, instruments.closedAt), {
    signs: [[QI, 'checked']],
    submittedBy: QI,
    releases: [
      ['crew', L1],
      ['inspector', QI],
    ],
  })
}
