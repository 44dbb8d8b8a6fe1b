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

/** What one form records at a hold point. One zod schema from form to fact. */
export const PointRecord = z.discriminatedUnion('type', [
  DefectRecord,
  DesignRecord,
  PermitRecord,
  StopRecord,
  MaterialsRecord,
  InstrumentsRecord,
  RemarkRecord,
  CleanlinessRecord,
  ProfileRecord,
  ClimateRecord,
  PreWrapRecord,
  ArrestRecord,
  ArrestWatchRecord,
  FillerMixRecord,
  FillerThicknessRecord,
  FillerCureRecord,
  WeepRecord,
  PrimerRecord,
  ResinMixRecord,
  PlyRecord,
  PlyCountRecord,
  TapeRollRecord,
  TapeWrapRecord,
  CureRecord,
  HardnessRecord,
  ThicknessRecord,
  VisualRecord,
  PressureTestRecord,
  ChecklistRecord,
  HandoverRecord,
  InServiceRecord,
  RemovalRecord,
])
export type PointRecord = z.infer<typeof PointRecord>
export type RecordType = PointRecord['type']
/** The record of one type. */
export type RecordOf<T extends RecordType> = Extract<PointRecord, { type: T }>

/** Every record type, in the order of the union. */
export const RECORD_TYPES: readonly RecordType[] = [
  'defect',
  'design',
  'permit',
  'stop',
  'materials',
  'instruments',
  'remark',
  'cleanliness',
  'profile',
  'climate',
  'pre-wrap',
  'arrest',
  'arrest-watch',
  'filler-mix',
  'filler-thickness',
  'filler-cure',
  'weep',
  'primer',
  'resin-mix',
  'ply',
  'ply-count',
  'tape-roll',
  'tape-wrap',
  'cure',
  'hardness',
  'thickness',
  'visual',
  'pressure-test',
  'checklist',
  'handover',
  'in-service',
  'removal',
]
