import { measured } from '@/lib/domain/reading'
import type { RecordOf } from '@/lib/domain/records/record'
import { GRID, grid, sid } from './facts-by-hand'

const mm = (text: string) => measured(text, 'mm')

/** The defect of the repair by hand: TW, NA and a mark not inspected are in its wall grid. */
export const defect: RecordOf<'defect'> = {
  type: 'defect',
  defectKind: 'through-wall',
  holeAxial: mm('7'),
  holeHoop: mm('5'),
  defectLength: mm('85'),
  clock: '6',
  grid: GRID,
  wall: grid('7.9 8.0 7.8 7.9 8.0|7.4 7.1 6.9 7.2 7.5|6.3 5.4 TW 5.2 6.1|7.3 NA 7.0 7.1 -', 'mm'),
  diameters: [mm('219.1'), mm('219.2')],
  nominalWall: mm('8.2'),
  material: 'carbon steel',
  medium: 'mine water',
  operatingPressure: measured('0.40', 'MPa'),
  designPressure: measured('1.10', 'MPa'),
  maxTemp: measured('24', 'degC'),
  cause: 'external corrosion',
  wantedLife: measured('10', 'yr'),
  instrument: sid('instrument:UT-02'),
}
/** Its design sheet. */
export const design: RecordOf<'design'> = {
  type: 'design',
  sheetNo: 'DS-1',
  revision: 0,
  designDiameter: mm('219.1'),
  designWall: mm('8.2'),
  designPressure: measured('1.10', 'MPa'),
  designTemp: measured('24', 'degC'),
  plies: measured('9', 'plies'),
  minThickness: mm('5.5'),
  overlapEachSide: mm('90'),
  taper: mm('30'),
  totalLength: mm('325'),
  testPressure: measured('1.210', 'MPa'),
  lifeYears: measured('10', 'yr'),
  envelope: {
    holeAxialMax: mm('12'),
    holeHoopMax: mm('12'),
    minWallAtBandEdge: mm('4.0'),
    diameterMin: mm('215'),
    diameterMax: mm('225'),
  },
}
