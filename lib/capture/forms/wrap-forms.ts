import type { FieldSpec, FormSpec } from './field-spec'
import { mixFields } from './work-forms'

const REMARK: FieldSpec = { kind: 'remark', name: 'remark', label: 'Remark', optional: true }
const PRESSURE = ['MPa', 'bar', 'psi'] as const
const DEGREES = ['degC', 'degF'] as const

export const PRIMER_FORM: FormSpec = {
  type: 'primer',
  title: 'Primer',
  observed: 'brushedAt',
  fields: [
    { kind: 'batch', name: 'batch', label: 'Primer', roles: ['primer'] },
    { kind: 'moment', name: 'brushedAt', label: 'Brushed' },
    { kind: 'person', name: 'brushedBy', label: 'Brushed by' },
    { kind: 'measured', name: 'mass', label: 'Mass', units: ['g', 'kg'], optional: true },
    { kind: 'text', name: 'place', label: 'Place', optional: true },
    REMARK,
  ],
}

export const RESIN_MIX_FORM: FormSpec = {
  type: 'resin-mix',
  title: 'Resin mix',
  observed: 'startedAt',
  timer: 'working-time',
  fields: mixFields('resin', 'hardener'),
}

export const PLY_FORM: FormSpec = {
  type: 'ply',
  title: 'Ply',
  observed: 'endedAt',
  fields: [
    { kind: 'whole', name: 'plyNo', label: 'Ply no.' },
    { kind: 'batch', name: 'fabric', label: 'Fabric', roles: ['fabric'] },
    { kind: 'text', name: 'mixNo', label: 'Mix' },
    { kind: 'moment', name: 'startedAt', label: 'Started' },
    { kind: 'moment', name: 'endedAt', label: 'Ended' },
    { kind: 'person', name: 'placedBy', label: 'Placed by' },
    { kind: 'person', name: 'supervisedBy', label: 'Supervised by', optional: true },
    { kind: 'measured', name: 'width', label: 'Width', units: ['mm'] },
    { kind: 'clock', name: 'startClock', label: 'Starts at clock' },
    { kind: 'measured', name: 'overlap', label: 'Overlap', units: ['mm'] },
    { kind: 'measured', name: 'jointOffset', label: 'End joint offset', units: ['mm'], optional: true },
    { kind: 'text', name: 'tension', label: 'Tension', hint: 'method and N, or: hand, firm' },
    { kind: 'yes-no', name: 'wetOut', label: 'Wet out' },
    { kind: 'yes-no', name: 'airRolled', label: 'Air rolled out' },
    REMARK,
  ],
}

export const PLY_COUNT_FORM: FormSpec = {
  type: 'ply-count',
  title: 'Ply count',
  observed: 'countedAt',
  fields: [
    { kind: 'measured', name: 'plies', label: 'Plies counted', units: ['plies'] },
    { kind: 'person', name: 'countedBy', label: 'Counted by' },
    { kind: 'moment', name: 'countedAt', label: 'Counted' },
  ],
}

export const TAPE_ROLL_FORM: FormSpec = {
  type: 'tape-roll',
  title: 'Roll of tape',
  observed: 'wrapEnd',
  timer: 'working-time',
  fields: [
    { kind: 'whole', name: 'rollNo', label: 'Roll no.' },
    { kind: 'batch', name: 'batch', label: 'Batch', roles: ['tape'] },
    { kind: 'yes-no', name: 'sealedUntilUse', label: 'Pack sealed until use' },
    { kind: 'measured', name: 'water', label: 'Water', units: DEGREES },
    { kind: 'measured', name: 'surface', label: 'Surface of the pipe', units: DEGREES },
    { kind: 'instrument', name: 'instrument', label: 'Thermometer', measures: ['degC', 'degF'], optional: true },
    { kind: 'moment', name: 'soakStart', label: 'Soak started' },
    { kind: 'measured', name: 'soakSeconds', label: 'Soaked for', units: ['s'] },
    { kind: 'yes-no', name: 'squeezed', label: 'Squeezed until the water was all through' },
    { kind: 'moment', name: 'wrapStart', label: 'Wrap started' },
    { kind: 'moment', name: 'wrapEnd', label: 'Wrap ended' },
    { kind: 'person', name: 'wrappedBy', label: 'Wrapped by' },
    { kind: 'person', name: 'supervisedBy', label: 'Supervised by', optional: true },
    { kind: 'yes-no', name: 'tensionKept', label: 'Tension kept' },
    { kind: 'yes-no', name: 'noGap', label: 'No gap between rolls' },
    { kind: 'yes-no', name: 'usedUp', label: 'Roll used up' },
    REMARK,
  ],
}

export const TAPE_WRAP_FORM: FormSpec = {
  type: 'tape-wrap',
  title: 'Wrap as a whole',
  observed: 'measuredAt',
  fields: [
    { kind: 'measured', name: 'tapeWidth', label: 'Tape width', units: ['mm'] },
    {
      kind: 'measured-list',
      name: 'pitches',
      label: 'Pitch, at several places',
      units: ['mm'],
      addLabel: 'Add a place',
    },
    { kind: 'whole', name: 'passes', label: 'Passes' },
    { kind: 'measured', name: 'startBeforeLeak', label: 'Starts before the leak', units: ['mm'] },
    { kind: 'measured', name: 'endAfterLeak', label: 'Ends after the leak', units: ['mm'] },
    { kind: 'moment', name: 'measuredAt', label: 'Measured' },
    { kind: 'person', name: 'measuredBy', label: 'Measured by' },
    REMARK,
  ],
}

export const CURE_FORM: FormSpec = {
  type: 'cure',
  title: 'Cure',
  observed: 'endedAt',
  fields: [
    { kind: 'instrument', name: 'logger', label: 'Logger', measures: ['degC', 'degF'], optional: true },
    { kind: 'text', name: 'heatSource', label: 'Heat source', optional: true },
    { kind: 'moment', name: 'startedAt', label: 'Started' },
    { kind: 'moment', name: 'endedAt', label: 'Ended' },
    { kind: 'yes-no', name: 'postCure', label: 'Post-cure' },
    { kind: 'yes-no', name: 'interrupted', label: 'Interrupted' },
    {
      kind: 'list',
      name: 'probes',
      label: 'Probes',
      each: 'Probe',
      addLabel: 'Add a probe',
      atLeast: 1,
      importer: 'logger',
      of: [
        { kind: 'text', name: 'place', label: 'Place' },
        { kind: 'clock', name: 'clock', label: 'Clock position' },
        {
          kind: 'list',
          name: 'series',
          label: 'Temperatures',
          each: 'Temperature',
          addLabel: 'Add a temperature',
          atLeast: 1,
          of: [
            { kind: 'moment', name: 'at', label: 'At' },
            { kind: 'measured', name: 'reading', label: 'Temperature', units: DEGREES },
          ],
        },
      ],
    },
    {
      kind: 'list',
      name: 'ambient',
      label: 'Ambient, where it was logged',
      each: 'Ambient temperature',
      addLabel: 'Add an ambient temperature',
      atLeast: 0,
      optional: true,
      of: [
        { kind: 'moment', name: 'at', label: 'At' },
        { kind: 'measured', name: 'reading', label: 'Temperature', units: DEGREES },
      ],
    },
    REMARK,
  ],
}

export const HARDNESS_FORM: FormSpec = {
  type: 'hardness',
  title: 'Hardness after cure',
  observed: 'takenAt',
  fields: [
    { kind: 'moment', name: 'takenAt', label: 'Started' },
    { kind: 'choice', name: 'scale', label: 'Scale', options: ['ShoreD', 'ShoreA', 'Barcol'] },
    { kind: 'instrument', name: 'instrument', label: 'Durometer', measures: ['ShoreD', 'ShoreA', 'Barcol'] },
    { kind: 'measured', name: 'temp', label: 'Temperature at the test', units: DEGREES, optional: true },
    { kind: 'chalk-grid', name: 'grid', label: 'Chalk grid' },
    {
      kind: 'marks',
      name: 'readings',
      label: 'Hardness at the marks',
      shape: 'stations',
      quantity: 'hardness',
      unit: 'ShoreD',
      special: true,
    },
    { kind: 'moment', name: 'endedAt', label: 'Ended', optional: true },
    REMARK,
  ],
}

export const THICKNESS_FORM: FormSpec = {
  type: 'thickness',
  title: 'Laminate thickness',
  observed: 'takenAt',
  fields: [
    { kind: 'moment', name: 'takenAt', label: 'Taken' },
    { kind: 'instrument', name: 'instrument', label: 'Laminate gauge', measures: ['mm'] },
    { kind: 'chalk-grid', name: 'grid', label: 'Chalk grid' },
    {
      kind: 'marks',
      name: 'readings',
      label: 'Thickness at the marks',
      shape: 'stations',
      quantity: 'laminate-thickness',
      unit: 'mm',
      special: true,
    },
    REMARK,
  ],
}

export const PRESSURE_TEST_FORM: FormSpec = {
  type: 'pressure-test',
  title: 'Pressure or leak test',
  observed: null,
  fields: [
    {
      kind: 'choice',
      name: 'kind',
      label: 'Kind of test',
      options: ['pressure test', 'service test', 'not tested, line in service'],
    },
    { kind: 'text', name: 'medium', label: 'Medium' },
    {
      kind: 'list',
      name: 'gauges',
      label: 'Gauges',
      each: 'Gauge',
      addLabel: 'Add a gauge',
      atLeast: 0,
      of: [{ kind: 'instrument', name: '', label: 'Gauge', measures: PRESSURE }],
    },
    { kind: 'instrument', name: 'thermometer', label: 'Steel thermometer', measures: ['degC', 'degF'], optional: true },
    {
      kind: 'list',
      name: 'readings',
      label: 'Readings',
      each: 'Reading',
      addLabel: 'Add a reading',
      atLeast: 0,
      of: [
        { kind: 'moment', name: 'at', label: 'At' },
        { kind: 'measured', name: 'pressure', label: 'Pressure', units: PRESSURE },
        {
          kind: 'measured',
          name: 'secondPressure',
          label: 'Second gauge, read at the same time',
          units: PRESSURE,
          optional: true,
        },
        { kind: 'measured', name: 'steel', label: 'Steel', units: DEGREES, optional: true },
      ],
    },
    { kind: 'yes-no', name: 'noLeak', label: 'No visible leak on the walk-down' },
    REMARK,
  ],
}
