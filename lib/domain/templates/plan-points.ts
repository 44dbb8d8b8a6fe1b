import type { z } from 'zod'
import type { PlanPoint } from '../plan'

/** One row of the plan before it is parsed: plain text, no brands. */
export type PlanRow = z.input<typeof PlanPoint>

type Row = Pick<PlanRow, 'title' | 'records' | 'signatures' | 'blocks' | 'photos'> & {
  codes: string
  hazards?: string[]
}

const LEAK =
  'The line may be under pressure: a hole can grow or burst when it is blasted, plugged or clamped. Only on the engineer’s assessment and the permit.'
const DUST =
  'Dust, noise, old lead or chromate coating, asbestos lagging: as the permit and the approved procedure say.'
const SPARK =
  'Blasting, power tools, static, flash, phones and heat are ignition sources. In a restricted area the permit decides what may be carried in.'
const RESIN =
  'Hardener and resin sensitise skin and lungs; a large mixed mass heats itself, smokes and can burn. Follow the material safety data sheets.'
const ENERGY = 'A pressure test stores energy; keep to the exclusion zone that the permit states.'

/** Points 01 to 13, 15 to 22: the same for both kinds of wrap. Codes are crew, inspector, client, engineer. */
export const COMMON_POINTS: Record<string, Row> = {
  '01': {
    title: 'Defect assessment and design data',
    codes: 'RHRH',
    records: [need('defect'), need('design')],
    signatures: [sign('approved', 'engineer'), sign('measured', 'inspector')],
    blocks: from('02', '20'),
    photos: [
      photo('defect-with-scale', 'Defect with scale, datum and clock mark'),
      photo('wider-shot', 'Wider shot of the place'),
    ],
    hazards: [LEAK],
  },
  '02': {
    title: 'Isolation, permit and pressure state',
    codes: 'HM--',
    records: [need('permit'), may('stop')],
    signatures: [sign('checked', 'lead')],
    blocks: from('05', '18'),
    photos: [photo('permit-board', 'Permit board without private data, gauge readable')],
    hazards: [LEAK, 'Contents may be hot, toxic, flammable or displace oxygen; rising water; confined space.', SPARK],
  },
  '03': {
    title: 'Incoming materials',
    codes: 'HWR-',
    records: [need('materials')],
    signatures: [sign('performed', 'stores'), sign('witnessed', 'inspector')],
    blocks: ['08', ...from('10', '15')],
    photos: [photo('package-label', 'Label legible, whole package')],
    hazards: [RESIN],
  },
  '04': {
    title: 'Instruments and persons',
    codes: 'HH--',
    records: [need('instruments')],
    signatures: [sign('checked', 'inspector')],
    blocks: from('05', '18'),
    photos: [photo('id-plate', 'Id plate with the reference reading')],
  },
  '05': {
    title: 'Surface cleanliness',
    codes: 'HHW-',
    records: [need('cleanliness')],
    signatures: [sign('checked', 'lead'), sign('measured', 'inspector')],
    blocks: ['06', ...from('08', '18')],
    photos: [
      photo('prepared-band', 'Whole prepared band with 6 o’clock in the mirror, board with the repair number'),
      photo('prepared-length', 'Tape along the prepared length'),
    ],
    hazards: [LEAK, DUST, SPARK],
  },
  '06': {
    title: 'Surface profile',
    codes: 'HHR-',
    records: [need('profile')],
    signatures: [sign('measured', 'inspector')],
    blocks: from('08', '18'),
    photos: [photo('profile-gauge', 'Gauge at its place on the band')],
    hazards: [DUST],
  },
  '07': {
    title: 'Climate and dew point',
    codes: 'HM--',
    records: [need('climate'), may('stop')],
    signatures: [sign('measured', 'lead'), sign('reviewed', 'inspector')],
    blocks: ['08', '11', '14'],
    photos: [photo('climate-face', 'Instrument face at the place')],
  },
  '08': {
    title: 'Temporary leak arrest',
    codes: 'HM--',
    records: [need('arrest'), may('weep')],
    signatures: [sign('checked', 'lead')],
    blocks: ['09'],
    photos: [photo('before-arrest', 'Leak before, wet'), photo('after-arrest', 'Leak after, dry')],
    hazards: [LEAK, SPARK],
  },
  '09': {
    title: 'Leak-arrest confirmation',
    codes: 'HHW-',
    records: [need('arrest-watch'), may('weep')],
    signatures: [sign('measured', 'inspector')],
    blocks: from('10', '18'),
    photos: [photo('dry-wipe', 'Dry white wipe with the time')],
    hazards: [LEAK],
  },
  '10': {
    title: 'Filler mix',
    codes: 'HMR-',
    records: [need('filler-mix')],
    signatures: [sign('performed', 'technician'), sign('checked', 'lead')],
    blocks: ['11'],
    photos: [photo('scale-and-labels', 'Scale with both parts and the batch labels')],
    hazards: [RESIN],
  },
  '11': {
    title: 'Filler placed, thickness at marks',
    codes: 'HHR-',
    records: [need('filler-thickness'), may('remark'), may('weep'), may('stop')],
    signatures: [sign('measured', 'inspector')],
    blocks: ['12'],
    photos: [photo('marks-under-gauge', 'Marks visible under or beside the gauge')],
    hazards: [RESIN, LEAK],
  },
  '12': {
    title: 'Filler cure',
    codes: 'HH--',
    records: [need('filler-cure')],
    signatures: [sign('measured', 'inspector')],
    blocks: ['13'],
    photos: [photo('gauge-on-filler', 'Gauge on the filler')],
  },
  '13': {
    title: 'Pre-wrap re-check',
    codes: 'HHW-',
    records: [need('pre-wrap'), need('climate')],
    signatures: [sign('checked', 'lead'), sign('checked', 'inspector')],
    blocks: ['14'],
    photos: [photo('marked-band', 'Band re-swept, start and finish marked')],
    hazards: [DUST],
  },
  '15': {
    title: 'Cure',
    codes: 'MR--',
    records: [need('cure')],
    signatures: [sign('measured', 'lead'), sign('reviewed', 'inspector')],
    blocks: ['16'],
    photos: [photo('logger-in-place', 'Logger or probe in place')],
    hazards: [
      'Heat blankets are an ignition source and can overheat resin: as the permit and the approved procedure say.',
    ],
  },
  '16': {
    title: 'Hardness',
    codes: 'HHW-',
    records: [need('hardness')],
    signatures: [sign('measured', 'inspector')],
    blocks: ['17', '19'],
    photos: [photo('gauge-on-row', 'Gauge on one mark of each clock row', 4)],
  },
  '17': {
    title: 'Visual, tap and dimensions',
    codes: 'HHWR',
    records: [need('thickness'), need('visual')],
    signatures: [sign('measured', 'inspector')],
    blocks: ['18'],
    photos: [photo('four-sides', 'The finished wrap from its four sides and the ends', 4)],
  },
  '18': {
    title: 'Pressure or leak test',
    codes: 'HHHR',
    records: [need('pressure-test')],
    signatures: [sign('measured', 'inspector'), sign('witnessed', 'client')],
    blocks: ['19'],
    photos: [photo('gauge-start-end', 'Gauge at start and at end', 2), photo('repair-dry', 'Repair dry under test')],
    hazards: [ENERGY],
  },
  '19': {
    title: 'Final acceptance',
    codes: 'HHHR',
    records: [need('checklist')],
    signatures: [sign('accepted', 'inspector'), sign('accepted', 'client')],
    blocks: ['20'],
    photos: [photo('label-fixed', 'Label fixed, whole repair')],
    hazards: ['A repair that looks sound outside may hide growth of the defect beneath it.'],
  },
  '20': {
    title: 'Handover and label',
    codes: '-RH-',
    records: [need('handover')],
    signatures: [sign('accepted', 'client')],
    blocks: ['21'],
    photos: [photo('label-readable', 'Label readable in place')],
    hazards: ['After repair: no welding, grinding, blasting, clamping or drilling on or close to the wrap.'],
  },
  '21': {
    title: 'In-service inspection',
    codes: '----',
    records: [need('in-service')],
    signatures: [sign('measured', 'in-service inspector')],
    blocks: [],
    photos: [photo('same-views', 'The same four views as at acceptance', 4)],
    hazards: ['Rope access, lone work and falling tools: as the permit says.'],
  },
  '22': {
    title: 'Removal or replacement',
    codes: '-HRR',
    records: [need('removal')],
    signatures: [sign('checked', 'inspector'), sign('reviewed', 'client')],
    blocks: [],
    photos: [photo('as-removed', 'As removed, with the underside')],
    hazards: [LEAK, DUST, SPARK],
  },
}

/** Point 14 by kind of wrap. */
export const WRAP_POINTS = {
  'wet lay-up': {
    title: 'Wrap application',
    codes: 'HHW-',
    records: [need('primer'), need('resin-mix'), need('ply'), need('ply-count', 2), may('stop')],
    signatures: [sign('checked', 'lead'), sign('checked', 'inspector')],
    blocks: ['15'],
    photos: [
      photo('nth-ply', 'A ply with its wet-out'),
      photo('end-joint', 'End joint with its offset'),
      photo('last-ply', 'Last ply under release film'),
    ],
    hazards: [RESIN, SPARK],
  },
  'water-activated tape': {
    title: 'Wrap application',
    codes: 'HHW-',
    records: [need('tape-roll'), need('tape-wrap'), need('ply-count', 2), may('stop')],
    signatures: [sign('checked', 'lead'), sign('checked', 'inspector')],
    blocks: ['15'],
    photos: [
      photo('roll-at-start', 'Roll at its start with the pack label'),
      photo('end-joint', 'End of the wrap'),
      photo('last-ply', 'Last pass squeezed'),
    ],
    hazards: [RESIN],
  },
} satisfies Record<string, Row>

function need(type: PlanRow['records'][number]['type'], atLeast = 1): PlanRow['records'][number] {
  return { type, atLeast }
}

function may(type: PlanRow['records'][number]['type']): PlanRow['records'][number] {
  return { type, atLeast: 0 }
}

function sign(
  meaning: PlanRow['signatures'][number]['meaning'],
  role: PlanRow['signatures'][number]['role'],
): PlanRow['signatures'][number] {
  return { meaning, role }
}

function photo(id: string, show: string, atLeast = 1): PlanRow['photos'][number] {
  return { id, show, atLeast }
}

function from(first: string, last: string): string[] {
  return Array.from({ length: Number(last) - Number(first) + 1 }, (_, step) =>
    String(Number(first) + step).padStart(2, '0'),
  )
}
