import { decimal } from '@/lib/domain/decimal'
import { Specification } from '@/lib/domain/specification'
import { COMMON } from './specification-common'
import { type CriterionText, criterion, formal, limit, type SpecificationText, timeTable } from './specification-parts'

const DEW_POINT = 'Td = 243.12 x / (17.62 - x), x = ln(U/100) + 17.62 t / (243.12 + t)'
const HEAD = {
  decisionRule: 'simple acceptance',
  dewPointFormula: DEW_POINT,
  noticeHours: decimal('26'),
  witnessWaitMinutes: decimal('40'),
  lifeCountsFrom: 'acceptance',
  extendedCuresAllowed: 1,
  tapRule: 'mean',
} as const

const WORKING_TIME = timeTable('step', ['16', '31'], ['21', '24'], ['27', '17'])

function wetLayUp(revision: 3 | 4): CriterionText[] {
  return [
    ...COMMON.beforeWork,
    ...COMMON.surface(['Sa 2½', 'Sa 3']),
    ...formal('08', 'persons-qualified', 'photos', 'order-of-facts'),
    ...COMMON.filler,
    ...COMMON.wrap,
    criterion('14', 'ratio', '10.1', 'Laminating resin, part B to 100 of part A by mass', {
      kind: 'ratio',
      partBPer100: decimal('38'),
      tolerance: decimal('1.5'),
    }),
    criterion('14', 'working-time', '10.2', 'Every mix used within its working time; above 27 °C not allowed', {
      kind: 'working-time',
      of: 'resin-mix',
      table: WORKING_TIME,
    }),
    criterion('14', 'plies', '10.3', 'Plies as designed, counted by two persons', { kind: 'plies', countedBy: 2 }),
    criterion('14', 'joint-offset', '10.4', 'End joint offset, each ply', {
      kind: 'each',
      quantity: 'joint-offset',
      min: limit('70', 'mm'),
    }),
    criterion('14', 'wet-out', '10.5', 'Every ply wetted out', { kind: 'yes', flag: 'wet-out' }),
    criterion('14', 'air', '10.6', 'Air rolled out of every ply', { kind: 'yes', flag: 'air-rolled' }),
    criterion(
      '15',
      'hold',
      '10.7',
      revision === 3
        ? 'Cure 18 h at 16 °C or above at the coldest probe'
        : 'Cure 18 h at 16 °C or above, a probe at the coldest clock position',
      {
        kind: 'cure-hold',
        hours: decimal('18'),
        atLeastTemp: decimal('16'),
        probeAtColdest: revision === 4,
      },
    ),
    ...formal('15', 'instruments-valid', 'photos', 'order-of-facts'),
    ...COMMON.afterCure('74', '77'),
  ]
}

function qpMd12(revision: 3 | 4): Specification {
  const text: SpecificationText = {
    number: 'QP-MD-12',
    title: 'Leak repair of dewatering lines by wet lay-up',
    ...HEAD,
    arrest: ['tapered plug', 'clamp', 'pressure taken off'],
    wrap: 'wet lay-up',
    criteria: wetLayUp(revision),
    notes: [
      'Spark-restricted areas: power tool preparation only with the engineer’s consent in writing.',
      'Table of working times: valid up to the temperature of its row; resin temperature is read at the mix.',
      'One extended cure is allowed before a nonconformance is raised; after it the full grid is tested again.',
      ...(revision === 4 ? ['Revision 4: a second cure probe at the coldest clock position is mandatory.'] : []),
    ],
  }
  return Specification.parse(text)
}

/** QP-MD-12 revision 3, 2026-04-20. All limits are invented for the demo. */
export const QP_MD_12_REV_3 = qpMd12(3)

/** QP-MD-12 revision 4, 2026-05-25: a second cure probe at the coldest clock position is mandatory. */
export const QP_MD_12_REV_4 = qpMd12(4)

const PLUG_AND_TAPE: CriterionText[] = [
  criterion('08', 'plug-amount', '7.1', 'Putty at least 2.5 times the hole area times the wall', {
    kind: 'plug-amount',
    timesHoleVolume: decimal('2.5'),
  }),
  criterion('08', 'kneading', '7.1.1', 'Putty kneaded 2 to 4.5 min', {
    kind: 'window',
    start: 'knead-start',
    end: 'knead-end',
    startPoint: '08',
    endPoint: '08',
    minMinutes: decimal('2'),
    maxMinutes: decimal('4.5'),
  }),
  criterion('08', 'one-colour', '7.1.2', 'Putty kneaded to one colour', { kind: 'yes', flag: 'one-colour' }),
  criterion('08', 'hard', '7.1.3', 'Putty judged hard after the time of the table', {
    kind: 'hardening-time',
    table: timeTable('interpolated', ['12', '38'], ['18', '26'], ['25', '17']),
  }),
  criterion('08', 'plate', '7.1.4', 'Plate thickness', {
    kind: 'each',
    quantity: 'plate-thickness',
    min: limit('0.5', 'mm'),
    max: limit('0.5', 'mm'),
  }),
  criterion('08', 'band', '7.1.5', 'Band cut to girth, build and tail', {
    kind: 'band-length',
    tailAtLeast: decimal('45'),
  }),
  criterion('08', 'over-hole', '7.1.6', 'Plug sits over the hole', { kind: 'yes', flag: 'plug-over-hole' }),
  criterion('08', 'surplus', '7.1.7', 'Surplus cut off', { kind: 'yes', flag: 'surplus-cut' }),
  criterion('08', 'tools', '7.1.8', 'Non-sparking tools where the area asks for them', {
    kind: 'yes',
    flag: 'non-sparking-tools',
  }),
  ...formal('08', 'batches-valid', 'persons-qualified', 'photos', 'order-of-facts'),
]

const TAPE: CriterionText[] = [
  criterion('14', 'sealed', '10.1', 'Pack sealed until use', { kind: 'yes', flag: 'sealed-until-use' }),
  criterion('14', 'soak', '10.2', 'Soak of each roll', {
    kind: 'each',
    quantity: 'soak-seconds',
    min: limit('20', 's'),
    max: limit('35', 's'),
  }),
  criterion('14', 'water', '10.3', 'Water of the soak', {
    kind: 'each',
    quantity: 'soak-water-temp',
    min: limit('10', 'degC'),
    max: limit('25', 'degC'),
  }),
  criterion('14', 'working-time', '10.4', 'Working time of each roll, from soak start to the end of its wrap', {
    kind: 'working-time',
    of: 'tape-roll',
    table: timeTable('interpolated', ['12', '4.0'], ['20', '2.75'], ['28', '1.75']),
  }),
  criterion('14', 'start', '10.5', 'Wrap starts half the total length before the leak', {
    kind: 'tape-start',
    shareOfTotalLength: decimal('0.5'),
  }),
  criterion('14', 'overlap', '10.6', 'Overlap of the turns, each place', {
    kind: 'each',
    quantity: 'tape-overlap',
    min: limit('55', '%'),
  }),
  criterion('14', 'tension', '10.7', 'Tension kept', { kind: 'yes', flag: 'tension-kept' }),
  criterion('14', 'squeezed', '10.8', 'Squeezed until the water is all through', { kind: 'yes', flag: 'squeezed' }),
  criterion('14', 'no-gap', '10.9', 'No gap between rolls', { kind: 'yes', flag: 'no-gap' }),
  criterion('14', 'plies', '10.10', 'Plies as designed, from passes and overlap, counted by two persons', {
    kind: 'plies',
    countedBy: 2,
  }),
  criterion('15', 'hold', '10.11', 'Cure 2 h at 15 °C surface or above', {
    kind: 'cure-hold',
    hours: decimal('2'),
    atLeastTemp: decimal('15'),
    probeAtColdest: false,
  }),
  ...formal('15', 'instruments-valid', 'photos', 'order-of-facts'),
]

/** QP-MD-14 revision 1, 2026-04-28: plug, plate and band; water-activated tape. */
export const QP_MD_14_REV_1 = Specification.parse({
  number: 'QP-MD-14',
  title: 'Leak repair of drains by plug, plate and band under water-activated tape',
  ...HEAD,
  arrest: ['plug, plate and band'],
  wrap: 'water-activated tape',
  criteria: [
    ...COMMON.beforeWork,
    ...COMMON.surface(['Sa 2½', 'Sa 3', 'St 3']),
    ...PLUG_AND_TAPE,
    ...COMMON.filler,
    ...COMMON.wrap,
    ...TAPE,
    ...COMMON.afterCure('72', '75'),
  ],
  notes: [
    'St 3 by hand or power tool is accepted. Non-sparking tools only.',
    'Tables are interpolated between their rows; outside them there is no value.',
  ],
} satisfies SpecificationText)
