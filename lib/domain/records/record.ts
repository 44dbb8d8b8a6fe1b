import * as z from 'zod'
import {
  ChecklistRecord,
  HandoverRecord,
  HardnessRecord,
  InServiceRecord,
  PressureTestRecord,
  RemovalRecord,
  ThicknessRecord,
  VisualRecord,
} from './after'
import {
  ArrestRecord,
  ArrestWatchRecord,
  FillerCureRecord,
  FillerMixRecord,
  FillerThicknessRecord,
  WeepRecord,
} from './arrest'
import { InstrumentsRecord, MaterialsRecord, RemarkRecord } from './checks'
import { DefectRecord, DesignRecord, PermitRecord, StopRecord } from './defect'
import { CleanlinessRecord, ClimateRecord, PreWrapRecord, ProfileRecord } from './surface'
import {
  CureRecord,
  PlyCountRecord,
  PlyRecord,
  PrimerRecord,
  ResinMixRecord,
  TapeRollRecord,
  TapeWrapRecord,
} from './wrap'

/** The schema of each record type. Each is built when a value is first held against it: a form on a slow device opens with its own alone. */
export const RECORD_SCHEMAS = {
  defect: DefectRecord,
  design: DesignRecord,
  permit: PermitRecord,
  stop: StopRecord,
  materials: MaterialsRecord,
  instruments: InstrumentsRecord,
  remark: RemarkRecord,
  cleanliness: CleanlinessRecord,
  profile: ProfileRecord,
  climate: ClimateRecord,
  'pre-wrap': PreWrapRecord,
  arrest: ArrestRecord,
  'arrest-watch': ArrestWatchRecord,
  'filler-mix': FillerMixRecord,
  'filler-thickness': FillerThicknessRecord,
  'filler-cure': FillerCureRecord,
  weep: WeepRecord,
  primer: PrimerRecord,
  'resin-mix': ResinMixRecord,
  ply: PlyRecord,
  'ply-count': PlyCountRecord,
  'tape-roll': TapeRollRecord,
  'tape-wrap': TapeWrapRecord,
  cure: CureRecord,
  hardness: HardnessRecord,
  thickness: ThicknessRecord,
  visual: VisualRecord,
  'pressure-test': PressureTestRecord,
  checklist: ChecklistRecord,
  handover: HandoverRecord,
  'in-service': InServiceRecord,
  removal: RemovalRecord,
} as const
export type RecordType = keyof typeof RECORD_SCHEMAS
type Schema = (typeof RECORD_SCHEMAS)[RecordType]

/** Every record type, in the order of the union. */
export const RECORD_TYPES = Object.keys(RECORD_SCHEMAS) as readonly RecordType[]

/** What one form records at a hold point. One zod schema from form to fact. */
export const PointRecord = z.lazy(() =>
  z.discriminatedUnion('type', Object.values(RECORD_SCHEMAS) as [Schema, ...Schema[]]),
)
export type PointRecord = z.infer<typeof PointRecord>
/** The record of one type. */
export type RecordOf<T extends RecordType> = Extract<PointRecord, { type: T }>
