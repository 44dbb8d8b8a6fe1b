import * as z from 'zod'
import { measuredIn } from '../reading'
import { CalendarDay, Moment } from '../time'
import { Clock, Degrees, Grid, InstrumentRef, Length, MarkedReadings, Pressure, Remark, Text, YesNo } from './common'

/** Point 01, as found: the defect, the pipe as measured and the wall grid. */
export const DefectRecord = z.lazy(() =>
  z.strictObject({
    type: z.literal('defect'),
    defectKind: z.enum(['through-wall', 'part-wall']),
    holeAxial: Length,
    holeHoop: Length,
    defectLength: Length,
    clock: Clock,
    grid: Grid,
    wall: MarkedReadings,
    diameters: z.array(Length).min(1).max(8),
    girths: z.array(Length).max(8).optional(),
    nominalWall: Length,
    material: Text,
    medium: Text,
    operatingPressure: Pressure,
    designPressure: Pressure,
    minTemp: Degrees.optional(),
    maxTemp: Degrees,
    cause: z.enum(['internal corrosion', 'external corrosion', 'erosion', 'mechanical damage', 'unknown']),
    wantedLife: measuredIn('yr'),
    instrument: InstrumentRef.optional(),
    remark: Remark.optional(),
  }),
)

/** How the pipe is counted in the laminate's design: the engineer's choice. */
export const PIPE_CASES = ['pipe stays elastic', 'pipe may yield', 'no help from the pipe'] as const
export const OVERLAP_FORMS = ['ISO 24817', 'ASME PCC-2'] as const

/**
 * What the design equations need beyond the defect: material values and the engineer's choices. Every field may be left out: an equation that needs it
 * then says what is missing. Strains are fractions; expansion is in millionths per kelvin.
 */
export const DesignProperties = z.lazy(() =>
  z.strictObject({
    edition: Text.optional(),
    pipeCase: z.enum(PIPE_CASES).optional(),
    overlapForm: z.enum(OVERLAP_FORMS).optional(),
    hoopModulus: measuredIn('MPa').optional(),
    axialModulus: measuredIn('MPa').optional(),
    shearModulus: measuredIn('MPa').optional(),
    poissonRatio: measuredIn('ratio').optional(),
    hoopStrain: measuredIn('mm/mm').optional(),
    axialStrain: measuredIn('mm/mm').optional(),
    baseStrain: measuredIn('mm/mm').optional(),
    temperatureFactor: measuredIn('ratio').optional(),
    temperatureRise: measuredIn('K').optional(),
    pipeExpansion: measuredIn('um/mK').optional(),
    laminateExpansion: measuredIn('um/mK').optional(),
    fractureEnergy: measuredIn('J/m2').optional(),
    serviceFactor: measuredIn('ratio').optional(),
    axialForce: measuredIn('N').optional(),
    pipeModulus: measuredIn('MPa').optional(),
    pipeStress: measuredIn('MPa').optional(),
    pipePressure: Pressure.optional(),
    livePressure: Pressure.optional(),
    plyThickness: Length.optional(),
    fewestPlies: measuredIn('plies').optional(),
    taperRatio: measuredIn('ratio').optional(),
    lapShearStrength: measuredIn('MPa').optional(),
    bondFactor: measuredIn('ratio').optional(),
    chosenBecause: Remark.optional(),
  }),
)

/** What the quantity sheet needs from the design: measures of band, filler and wrap, densities, and what is added for spare and waste. */
export const DesignQuantities = z.lazy(() =>
  z.strictObject({
    bandTail: Length.optional(),
    bandThickness: Length.optional(),
    bandBuild: Length.optional(),
    fillerLength: Length.optional(),
    fillerGirth: Length.optional(),
    fillerThickness: Length.optional(),
    fillerDensity: measuredIn('g/cm3').optional(),
    fillerSpare: measuredIn('%').optional(),
    resinPerPly: measuredIn('g/m2').optional(),
    resinSpare: measuredIn('%').optional(),
    fabricWaste: measuredIn('%').optional(),
    tapeWidth: Length.optional(),
    tapePitch: Length.optional(),
    rollLength: measuredIn('m').optional(),
    endTurns: measuredIn('ratio').optional(),
    tapeWaste: measuredIn('%').optional(),
  }),
)

/** Point 01, design output: what the engineer states. Every later "as designed" criterion reads from here. */
export const DesignRecord = z.lazy(() =>
  z.strictObject({
    type: z.literal('design'),
    sheetNo: Text,
    revision: z.int().min(0).max(99),
    designDiameter: Length,
    designWall: Length,
    designPressure: Pressure,
    designTemp: Degrees,
    plies: measuredIn('plies'),
    minThickness: Length,
    overlapEachSide: Length,
    taper: Length,
    totalLength: Length,
    testPressure: Pressure,
    lifeYears: measuredIn('yr'),
    firstInspectionOn: CalendarDay.optional(),
    envelope: z.strictObject({
      holeAxialMax: Length,
      holeHoopMax: Length,
      minWallAtBandEdge: Length,
      diameterMin: Length,
      diameterMax: Length,
    }),
    properties: DesignProperties.optional(),
    quantities: DesignQuantities.optional(),
    basis: Remark.optional(),
    remark: Remark.optional(),
  }),
)

/** Point 02: permit, isolation and pressure state. The area authority is named; no account is needed. */
export const PermitRecord = z.lazy(() =>
  z.strictObject({
    type: z.literal('permit'),
    permitNo: Text,
    validFrom: Moment,
    validTo: Moment,
    areaAuthority: Text,
    state: z.enum(['live', 'isolated', 'depressurised']),
    pressureAtStart: Pressure,
    gasTest: Text.optional(),
    sparkRestricted: YesNo,
    remark: Remark.optional(),
  }),
)

/** An adverse or resumed state of the work: anyone may enter it with one touch. */
export const StopRecord = z.lazy(() =>
  z.strictObject({
    type: z.literal('stop'),
    what: z.enum(['stopped', 'resumed']),
    reason: Text,
  }),
)
