import { z } from 'zod'
import { measuredIn } from '../reading'
import { CalendarDay, Moment } from '../time'
import { Clock, Degrees, Grid, InstrumentRef, Length, MarkedReadings, Pressure, Remark, Text, YesNo } from './common'

/** Point 01, as found: the defect, the pipe as measured and the wall grid. */
export const DefectRecord = z.strictObject({
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
})

/** Point 01, design output: what the engineer states. Every later "as designed" criterion reads from here. */
export const DesignRecord = z.strictObject({
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
  basis: Remark.optional(),
  remark: Remark.optional(),
})

/** Point 02: permit, isolation and pressure state. The area authority is named; no account is needed. */
export const PermitRecord = z.strictObject({
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
})

/** An adverse or resumed state of the work: anyone may enter it with one touch. */
export const StopRecord = z.strictObject({
  type: z.literal('stop'),
  what: z.enum(['stopped', 'resumed']),
  reason: Text,
})
