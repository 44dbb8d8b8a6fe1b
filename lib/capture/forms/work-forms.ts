import type { FieldSpec, FormSpec } from './field-spec'

const REMARK: FieldSpec = { kind: 'remark', name: 'remark', label: 'Remark', optional: true }
const PRESSURE = ['MPa', 'bar', 'psi'] as const
const DEGREES = ['degC', 'degF'] as const

export const CLEANLINESS_FORM: FormSpec = {
  type: 'cleanliness',
  title: 'Surface cleanliness',
  observed: 'checkedAt',
  fields: [
    { kind: 'moment', name: 'finishedAt', label: 'Preparation finished' },
    { kind: 'moment', name: 'checkedAt', label: 'Checked' },
    {
      kind: 'choice',
      name: 'method',
      label: 'Prepared by',
      options: ['blast', 'power tool', 'hand tool', 'water jet'],
    },
    {
      kind: 'choice',
      name: 'grade',
      label: 'Grade by the pictures',
      options: ['Sa 1', 'Sa 2', 'Sa 2 1/2', 'Sa 3', 'St 2', 'St 3', 'Wa 1', 'Wa 2', 'Wa 2 1/2'],
    },
    { kind: 'measured', name: 'dustClass', label: 'Dust class', units: ['class'] },
    {
      kind: 'marks',
      name: 'salts',
      label: 'Soluble salts',
      shape: 'numbered',
      prefix: 'S',
      quantity: 'salts',
      unit: 'mg/m2',
      special: true,
    },
    {
      kind: 'list',
      name: 'extractions',
      label: 'Salts from conductivities, where the meter shows µS/cm',
      each: 'Patch',
      addLabel: 'Add a patch',
      atLeast: 0,
      optional: true,
      of: [
        { kind: 'text', name: 'mark', label: 'Mark', hint: 'S1, S2 …' },
        { kind: 'measured', name: 'water', label: 'Water', units: ['ml'] },
        { kind: 'measured', name: 'area', label: 'Area of the patch', units: ['mm2'] },
        { kind: 'measured', name: 'blank', label: 'Conductivity before', units: ['uS/cm'] },
        { kind: 'measured', name: 'after', label: 'Conductivity after', units: ['uS/cm'] },
        {
          kind: 'measured',
          name: 'factor',
          label: 'Factor of the salt',
          hint: 'c in kg/(m²·S), 5 for a mixture of salts by ISO 8502-9',
          units: ['ratio'],
        },
      ],
    },
    { kind: 'instrument', name: 'instrument', label: 'Salt meter', measures: ['mg/m2', 'uS/cm'], optional: true },
    { kind: 'yes-no', name: 'oilFree', label: 'Free of oil, water does not break' },
    { kind: 'choice', name: 'flashRust', label: 'Flash rust', options: ['none', 'L', 'M', 'H'], optional: true },
    { kind: 'measured', name: 'preparedLeft', label: 'Prepared, upstream of the leak', units: ['mm', 'in'] },
    { kind: 'measured', name: 'preparedRight', label: 'Prepared, downstream of the leak', units: ['mm', 'in'] },
    { kind: 'text', name: 'area', label: 'Area, when only a part', optional: true },
    REMARK,
  ],
}

export const PROFILE_FORM: FormSpec = {
  type: 'profile',
  title: 'Surface profile',
  observed: 'takenAt',
  fields: [
    { kind: 'moment', name: 'takenAt', label: 'Taken' },
    { kind: 'choice', name: 'method', label: 'Method', options: ['comparator', 'replica tape', 'stylus'] },
    { kind: 'instrument', name: 'instrument', label: 'Gauge', measures: ['um', 'mil'] },
    {
      kind: 'marks',
      name: 'readings',
      label: 'Profile at the marks',
      shape: 'numbered',
      prefix: 'P',
      quantity: 'profile',
      unit: 'um',
      special: true,
    },
    {
      kind: 'yes-no',
      name: 'tapeGross',
      label: 'Replica tape: film still in the reading',
      hint: 'To be said for a replica tape; without it no height is known.',
      optional: true,
    },
    { kind: 'measured', name: 'film', label: 'Film of the tape in use', units: ['um', 'mil'], optional: true },
    { kind: 'text', name: 'tapeKept', label: 'Replica tape kept as', optional: true },
    REMARK,
  ],
}

export const CLIMATE_FORM: FormSpec = {
  type: 'climate',
  title: 'Climate and dew point',
  observed: 'takenAt',
  fields: [
    { kind: 'moment', name: 'takenAt', label: 'Taken' },
    { kind: 'instrument', name: 'instrument', label: 'Hygrometer', measures: ['%', 'degC'] },
    { kind: 'measured', name: 'air', label: 'Air', units: DEGREES },
    { kind: 'measured', name: 'humidity', label: 'Relative humidity', units: ['%'] },
    { kind: 'instrument', name: 'steelInstrument', label: 'Steel thermometer', measures: ['degC', 'degF'] },
    {
      kind: 'list',
      name: 'steel',
      label: 'Steel, with the coldest spot',
      each: 'Spot',
      addLabel: 'Add a spot',
      atLeast: 1,
      of: [
        { kind: 'clock', name: 'clock', label: 'Clock position' },
        { kind: 'reading', name: 'reading', label: 'Steel', units: DEGREES },
      ],
    },
    { kind: 'text', name: 'change', label: 'Change of weather', optional: true },
    REMARK,
  ],
}

export const PRE_WRAP_FORM: FormSpec = {
  type: 'pre-wrap',
  title: 'Pre-wrap re-check',
  observed: 'checkedAt',
  fields: [
    { kind: 'moment', name: 'checkedAt', label: 'Checked' },
    { kind: 'yes-no', name: 'resweptAndWiped', label: 'Swept again and wiped' },
    { kind: 'yes-no', name: 'dry', label: 'Dry' },
    { kind: 'yes-no', name: 'freeOfFlashRust', label: 'Free of flash rust' },
    { kind: 'yes-no', name: 'stationsMarked', label: 'Start and finish stations marked' },
    REMARK,
  ],
}

export const ARREST_FORM: FormSpec = {
  type: 'arrest',
  title: 'Temporary leak arrest',
  observed: null,
  fields: [
    {
      kind: 'variant',
      name: 'arrest',
      label: 'Kind of arrest',
      by: 'method',
      variants: [
        {
          value: 'plug, plate and band',
          of: [
            {
              kind: 'measured-list',
              name: 'girths',
              label: 'Girth by tape',
              units: ['mm', 'in'],
              addLabel: 'Add a girth',
            },
            { kind: 'batch', name: 'puttyBatch', label: 'Putty stick', roles: ['putty'] },
            { kind: 'measured', name: 'puttyUsed', label: 'Putty used', units: ['mm3'] },
            { kind: 'measured', name: 'ambient', label: 'Ambient at the plug', units: DEGREES },
            { kind: 'moment', name: 'kneadStart', label: 'Kneading from' },
            { kind: 'moment', name: 'kneadEnd', label: 'Kneading to' },
            { kind: 'yes-no', name: 'oneColour', label: 'One colour' },
            { kind: 'moment', name: 'pressedAt', label: 'Pressed on' },
            { kind: 'yes-no', name: 'overHole', label: 'Plug sits over the hole' },
            { kind: 'measured', name: 'plateThickness', label: 'Plate thickness', units: ['mm'] },
            { kind: 'text', name: 'plateSize', label: 'Plate size', optional: true },
            { kind: 'batch', name: 'bandBatch', label: 'Band', roles: ['band'], optional: true },
            { kind: 'measured', name: 'bandThickness', label: 'Band thickness', units: ['mm'] },
            { kind: 'measured', name: 'bandBuild', label: 'Build under the band', units: ['mm'] },
            { kind: 'measured', name: 'bandTail', label: 'Band tail', units: ['mm'] },
            { kind: 'measured', name: 'bandCut', label: 'Band cut to', units: ['mm'] },
            { kind: 'moment', name: 'bandTightAt', label: 'Band tight' },
            { kind: 'moment', name: 'judgedHardAt', label: 'Judged hard', optional: true },
            { kind: 'yes-no', name: 'surplusCut', label: 'Surplus cut off' },
            { kind: 'yes-no', name: 'nonSparkingAsked', label: 'Area asks for non-sparking tools' },
            { kind: 'yes-no', name: 'nonSparkingTools', label: 'Non-sparking tools used' },
          ],
        },
        ...(['tapered plug', 'clamp', 'stop-off putty', 'pressure taken off'] as const).map((value) => ({
          value,
          of: [
            { kind: 'moment', name: 'placedAt', label: 'Placed' },
            { kind: 'batch', name: 'batch', label: 'Batch', roles: ['putty', 'band', 'other'], optional: true },
            { kind: 'text', name: 'dimensions', label: 'Dimensions', optional: true },
          ] satisfies FieldSpec[],
        })),
      ],
    },
    { kind: 'measured', name: 'pressureThen', label: 'Pressure then', units: PRESSURE },
    { kind: 'yes-no', name: 'leftInside', label: 'Left inside the repair' },
    { kind: 'person', name: 'placedBy', label: 'Placed by' },
    REMARK,
  ],
}

export const ARREST_WATCH_FORM: FormSpec = {
  type: 'arrest-watch',
  title: 'Leak-arrest confirmation',
  observed: 'startedAt',
  timer: 'watch',
  fields: [
    { kind: 'moment', name: 'startedAt', label: 'Watch started' },
    { kind: 'measured', name: 'pressure', label: 'Pressure during the watch', units: PRESSURE },
    { kind: 'instrument', name: 'gauge', label: 'Pressure gauge', measures: ['MPa', 'bar', 'psi'], optional: true },
    { kind: 'moment', name: 'dripSeenAt', label: 'Drip seen', optional: true },
    { kind: 'moment', name: 'endedAt', label: 'Watch ended', optional: true },
    { kind: 'yes-no', name: 'wipeDry', label: 'White wipe dry', optional: true },
    { kind: 'yes-no', name: 'freeOfFlashRust', label: 'Free of flash rust', optional: true },
    { kind: 'person', name: 'watchedBy', label: 'Watched by' },
    REMARK,
  ],
}

/** Fields of a mix of two parts: filler or laminating resin. */
export function mixFields(roleA: 'filler' | 'resin', roleB: 'filler' | 'hardener'): FieldSpec[] {
  return [
    { kind: 'text', name: 'mixNo', label: 'Mix', hint: 'for example M1' },
    { kind: 'person', name: 'mixedBy', label: 'Mixed by' },
    { kind: 'person', name: 'checkedBy', label: 'Checked by', optional: true },
    { kind: 'person', name: 'supervisedBy', label: 'Supervised by', optional: true },
    { kind: 'choice', name: 'proportion', label: 'Proportioned', options: ['by mass', 'by volume', 'whole kit'] },
    {
      kind: 'list',
      name: 'partA',
      label: 'Part A',
      each: 'Part A',
      addLabel: 'Add a batch of part A',
      atLeast: 1,
      of: [
        { kind: 'batch', name: 'batch', label: 'Batch', roles: [roleA] },
        { kind: 'measured', name: 'amount', label: 'Amount', units: ['g', 'kg', 'ml'], optional: true },
      ],
    },
    {
      kind: 'list',
      name: 'partB',
      label: 'Part B',
      each: 'Part B',
      addLabel: 'Add a batch of part B',
      atLeast: 0,
      of: [
        { kind: 'batch', name: 'batch', label: 'Batch', roles: [roleB] },
        { kind: 'measured', name: 'amount', label: 'Amount', units: ['g', 'kg', 'ml'], optional: true },
      ],
    },
    { kind: 'measured', name: 'kits', label: 'Kits', units: ['kits'], optional: true },
    { kind: 'instrument', name: 'scale', label: 'Scale', measures: ['g', 'kg'], optional: true },
    { kind: 'measured', name: 'resinTemp', label: 'Temperature of the mix', units: DEGREES, optional: true },
    { kind: 'moment', name: 'startedAt', label: 'Mixing started' },
    { kind: 'moment', name: 'endedAt', label: 'Mixing ended', optional: true },
    { kind: 'yes-no', name: 'colourUniform', label: 'Colour uniform', optional: true },
    { kind: 'moment', name: 'usedBy', label: 'Used up', optional: true },
    { kind: 'measured', name: 'spare', label: 'Spare', units: ['g', 'kg'], optional: true },
    { kind: 'text', name: 'scrapped', label: 'Scrapped, why', optional: true },
    REMARK,
  ]
}

export const FILLER_MIX_FORM: FormSpec = {
  type: 'filler-mix',
  title: 'Filler mix',
  observed: 'startedAt',
  timer: 'working-time',
  fields: mixFields('filler', 'filler'),
}

export const FILLER_THICKNESS_FORM: FormSpec = {
  type: 'filler-thickness',
  title: 'Filler at marked points',
  observed: 'measuredAt',
  fields: [
    { kind: 'text', name: 'mixNo', label: 'Mix' },
    { kind: 'moment', name: 'placedAt', label: 'Placed' },
    { kind: 'person', name: 'placedBy', label: 'Placed by' },
    { kind: 'instrument', name: 'instrument', label: 'Depth gauge', measures: ['mm'] },
    {
      kind: 'marks',
      name: 'before',
      label: 'Height before, mm',
      shape: 'filler',
      quantity: 'filler-before',
      unit: 'mm',
      special: true,
    },
    {
      kind: 'marks',
      name: 'after',
      label: 'Height after, mm',
      shape: 'filler',
      quantity: 'filler-after',
      unit: 'mm',
      special: true,
    },
    { kind: 'text', name: 'holeMark', label: 'Mark over the hole', hint: 'for example 0@6' },
    { kind: 'moment', name: 'measuredAt', label: 'Measured' },
    { kind: 'yes-no', name: 'smooth', label: 'Smooth, no step' },
    { kind: 'measured', name: 'coveredLength', label: 'Length covered', units: ['mm'], optional: true },
    { kind: 'measured', name: 'coveredGirth', label: 'Girth covered', units: ['mm'], optional: true },
    REMARK,
  ],
}

export const FILLER_CURE_FORM: FormSpec = {
  type: 'filler-cure',
  title: 'Filler hardness',
  observed: 'takenAt',
  fields: [
    { kind: 'moment', name: 'takenAt', label: 'Taken' },
    { kind: 'instrument', name: 'instrument', label: 'Durometer', measures: ['ShoreD'] },
    { kind: 'measured', name: 'temp', label: 'Temperature', units: DEGREES, optional: true },
    {
      kind: 'marks',
      name: 'readings',
      label: 'Hardness on the filler',
      shape: 'numbered',
      prefix: 'F',
      quantity: 'filler-hardness',
      unit: 'ShoreD',
      special: true,
    },
    { kind: 'yes-no', name: 'noWeep', label: 'No weep' },
    { kind: 'text', name: 'weepAt', label: 'Weep at', optional: true },
    REMARK,
  ],
}

export const WEEP_FORM: FormSpec = {
  type: 'weep',
  title: 'Weep or leak seen',
  observed: 'seenAt',
  fields: [
    { kind: 'moment', name: 'seenAt', label: 'Seen' },
    { kind: 'text', name: 'place', label: 'Place', hint: 'for example C-6' },
    REMARK,
  ],
}
