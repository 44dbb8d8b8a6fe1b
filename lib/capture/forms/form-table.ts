import type { RecordType } from '@/lib/domain/records/record'
import { CHECKLIST_FORM, HANDOVER_FORM, IN_SERVICE_FORM, REMOVAL_FORM, VISUAL_FORM } from './after-forms'
import { DEFECT_FORM, DESIGN_FORM, INSTRUMENTS_FORM, MATERIALS_FORM, PERMIT_FORM, REMARK_FORM, STOP_FORM } from './before-forms'
import type { FormSpec } from './field-spec'
import { ARREST_FORM, ARREST_WATCH_FORM, CLEANLINESS_FORM, CLIMATE_FORM, FILLER_CURE_FORM, FILLER_MIX_FORM, FILLER_THICKNESS_FORM, PRE_WRAP_FORM, PROFILE_FORM, WEEP_FORM } from './work-forms'
import { CURE_FORM, HARDNESS_FORM, PLY_COUNT_FORM, PLY_FORM, PRESSURE_TEST_FORM, PRIMER_FORM, RESIN_MIX_FORM, TAPE_ROLL_FORM, TAPE_WRAP_FORM, THICKNESS_FORM } from './wrap-forms'

/** The form of each record type. */
export const FORMS: Record<RecordType, FormSpec> = {
  defect: DEFECT_FORM, design: DESIGN_FORM, permit: PERMIT_FORM, stop: STOP_FORM, materials: MATERIALS_FORM, instruments: INSTRUMENTS_FORM, remark: REMARK_FORM,
  cleanliness: CLEANLINESS_FORM, profile: PROFILE_FORM, climate: CLIMATE_FORM, 'pre-wrap': PRE_WRAP_FORM, arrest: ARREST_FORM, 'arrest-watch': ARREST_WATCH_FORM,
  'filler-mix': FILLER_MIX_FORM, 'filler-thickness': FILLER_THICKNESS_FORM, 'filler-cure': FILLER_CURE_FORM, weep: WEEP_FORM, primer: PRIMER_FORM, 'resin-mix': RESIN_MIX_FORM,
  ply: PLY_FORM, 'ply-count': PLY_COUNT_FORM, 'tape-roll': TAPE_ROLL_FORM, 'tape-wrap': TAPE_WRAP_FORM, cure: CURE_FORM, hardness: HARDNESS_FORM, thickness: THICKNESS_FORM,
  visual: VISUAL_FORM, 'pressure-test': PRESSURE_TEST_FORM, checklist: CHECKLIST_FORM, handover: HANDOVER_FORM, 'in-service': IN_SERVICE_FORM, removal: REMOVAL_FORM,
}
