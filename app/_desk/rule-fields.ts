import { EVENTS, FLAGS, QUANTITIES } from '@/lib/domain/judge/quantity-names'
import type { RuleKind } from '@/lib/domain/specification'
import type { Choice, DeskField } from './desk-field'

const choices = (table: Record<string, string>): Choice[] =>
  Object.entries(table).map(([id, label]) => ({ id, label: `${label.split(';')[0] ?? label}`, note: id }))
const QUANTITY: DeskField = { kind: 'select', name: 'quantity', label: 'What is read', options: choices(QUANTITIES) }
const FLAG: DeskField = { kind: 'select', name: 'flag', label: 'Statement', options: choices(FLAGS) }
const MIN: DeskField = { kind: 'limit', name: 'min', label: 'At least' }
const MAX: DeskField = { kind: 'limit', name: 'max', label: 'At most' }
const event = (name: string, label: string): DeskField => ({ kind: 'select', name, label, options: choices(EVENTS) })
const TABLE: readonly DeskField[] = [
  {
    kind: 'choice',
    name: 'table.kind',
    label: 'Between rows',
    options: ['step', 'interpolated'],
    hint: 'step: a row holds up to its temperature',
  },
  {
    kind: 'list',
    name: 'table.rows',
    label: 'Table',
    each: 'Row',
    addLabel: 'Add a row',
    of: [
      { kind: 'decimal', name: 'temp', label: 'Temperature, °C' },
      { kind: 'decimal', name: 'minutes', label: 'Minutes' },
    ],
  },
]

/** Kinds of rule in words. */
export const RULE_WORDS: Record<RuleKind, string> = {
  each: 'each reading',
  mean: 'mean of the readings',
  count: 'number of readings',
  grade: 'grade by pictorial standard',
  yes: 'statement must be yes',
  no: 'statement must be no',
  window: 'time between two events',
  ratio: 'mixing ratio by mass',
  'working-time': 'working time by temperature',
  'hardening-time': 'hardening time by temperature',
  'plug-amount': 'amount of putty',
  'band-length': 'length of the band',
  'tape-start': 'start of the tape',
  'cure-hold': 'cure, unbroken time at temperature',
  'cure-equivalent': 'cure, equivalent time',
  'pressure-drop': 'pressure drop, corrected for steel temperature',
  findings: 'findings allowed by kind and size',
  'design-envelope': 'as found within the design',
  plies: 'plies as designed',
  'instruments-valid': 'instruments in date and range',
  'batches-valid': 'batches in date, not barred',
  'persons-qualified': 'persons qualified on the day',
  'permit-valid': 'permit valid',
  photos: 'photos as the plan demands',
  'order-of-facts': 'times in the order of the work',
}

/** The fields of each kind of rule, under the rule's own name. */
export const RULE_FIELDS: Record<RuleKind, readonly DeskField[]> = {
  each: [QUANTITY, MIN, MAX],
  mean: [QUANTITY, MIN, MAX],
  count: [QUANTITY, { kind: 'whole', name: 'atLeast', label: 'At least' }],
  grade: [{ kind: 'lines', name: 'grades', label: 'Grades accepted' }],
  yes: [FLAG],
  no: [FLAG],
  window: [
    event('start', 'From'),
    event('end', 'To'),
    { kind: 'decimal', name: 'minMinutes', label: 'At least, minutes', optional: true },
    { kind: 'decimal', name: 'maxMinutes', label: 'At most, minutes', optional: true },
    { kind: 'choice', name: 'pick', label: 'Which start counts', options: ['first', 'latest'] },
    { kind: 'text', name: 'startPoint', label: 'Start taken at point', optional: true },
    { kind: 'text', name: 'endPoint', label: 'End taken at point', optional: true },
  ],
  ratio: [
    { kind: 'decimal', name: 'partBPer100', label: 'Part B to 100 of part A' },
    { kind: 'decimal', name: 'tolerance', label: 'Tolerance, ±' },
  ],
  'working-time': [
    {
      kind: 'select',
      name: 'of',
      label: 'Of',
      options: [
        { id: 'filler-mix', label: 'filler mix' },
        { id: 'resin-mix', label: 'resin mix' },
        { id: 'tape-roll', label: 'tape roll' },
      ],
    },
    ...TABLE,
  ],
  'hardening-time': TABLE,
  'plug-amount': [{ kind: 'decimal', name: 'timesHoleVolume', label: 'Times the hole area and wall' }],
  'band-length': [{ kind: 'decimal', name: 'tailAtLeast', label: 'Tail at least, mm' }],
  'tape-start': [{ kind: 'decimal', name: 'shareOfTotalLength', label: 'Share of the total length' }],
  'cure-hold': [
    { kind: 'decimal', name: 'hours', label: 'Hours' },
    { kind: 'decimal', name: 'atLeastTemp', label: 'At or above, °C' },
    { kind: 'flag', name: 'probeAtColdest', label: 'A probe at the coldest clock position is mandatory' },
  ],
  'cure-equivalent': TABLE,
  'pressure-drop': [
    { kind: 'decimal', name: 'maxDrop', label: 'Drop at most, MPa' },
    { kind: 'decimal', name: 'minMinutes', label: 'Over at least, minutes' },
    { kind: 'decimal', name: 'correction.modulusMPa', label: 'Modulus of the steel, MPa' },
    { kind: 'decimal', name: 'correction.poisson', label: 'Poisson’s ratio' },
    { kind: 'float', name: 'correction.alphaPerK', label: 'Expansion of the steel, 1/K' },
    { kind: 'float', name: 'correction.betaPerK', label: 'Expansion of the medium, 1/K' },
    { kind: 'decimal', name: 'correction.bulkModulusMPa', label: 'Bulk modulus of the medium, MPa' },
    { kind: 'choice', name: 'correction.ends', label: 'Ends of the line', options: ['free', 'anchored'] },
  ],
  findings: [
    {
      kind: 'list',
      name: 'allowed',
      label: 'Allowed',
      each: 'Finding',
      addLabel: 'Add a finding',
      hint: 'None: no finding is allowed',
      of: [
        { kind: 'text', name: 'finding', label: 'Kind' },
        { kind: 'decimal', name: 'maxSize', label: 'Size at most, mm' },
      ],
    },
  ],
  plies: [{ kind: 'whole', name: 'countedBy', label: 'Counted by how many persons' }],
  'design-envelope': [],
  'instruments-valid': [],
  'batches-valid': [],
  'persons-qualified': [],
  'permit-valid': [],
  photos: [],
  'order-of-facts': [],
}

/** Lists of a rule that are recorded as empty when nothing was added. */
export const RULE_LISTS: Partial<Record<RuleKind, string>> = { findings: 'allowed' }
