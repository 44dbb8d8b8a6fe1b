import { decimal } from '@/lib/domain/decimal'
import { type CriterionText, criterion, formal, limit, ofDesign } from './specification-parts'

/** Minutes as the specification's windows write them. */
const PREP_TO_WRAP = '225'
const CLIMATE_VALID = '120'

/** Points 01 to 04: as found, permit, materials, instruments and persons. Clause numbers are the demo specification's own. */
const BEFORE_WORK: CriterionText[] = [
  criterion('01', 'envelope', '1.2', 'As found within the envelope of the design', { kind: 'design-envelope' }),
  ...formal('01', 'instruments-valid', 'photos'),
  criterion('02', 'permit', '2.1', 'Permit valid', { kind: 'permit-valid' }),
  ...formal('02', 'photos'),
  criterion('03', 'certificate', '3.1', 'Certificate matches the batch', { kind: 'yes', flag: 'certificate-matches' }),
  criterion('03', 'system', '3.3', 'System as qualified, no mixing of systems', {
    kind: 'yes',
    flag: 'system-qualified',
  }),
  ...formal('03', 'batches-valid', 'photos'),
  ...formal('04', 'instruments-valid', 'persons-qualified', 'photos'),
]

/** Points 05 to 07 and 09: surface, climate and watch. `grades` are the grades that are accepted. */
function surface(grades: string[]): CriterionText[] {
  return [
    criterion('05', 'grade', '5.1', 'Surface cleanliness', { kind: 'grade', grades }),
    criterion('05', 'salts', '5.2', 'Soluble salts, each', {
      kind: 'each',
      quantity: 'salts',
      max: limit('25', 'mg/m2'),
    }),
    criterion('05', 'salts-count', '5.2', 'Soluble salts, number of readings', {
      kind: 'count',
      quantity: 'salts',
      atLeast: 3,
    }),
    criterion('05', 'dust', '5.3', 'Dust class', { kind: 'each', quantity: 'dust-class', max: limit('2', 'class') }),
    criterion('05', 'oil', '5.4', 'Free of oil', { kind: 'yes', flag: 'oil-free' }),
    criterion('05', 'length', '5.5', 'Prepared to each side of the leak: half the total length', {
      kind: 'each',
      quantity: 'prepared-length',
      min: ofDesign('totalLength', '0.5'),
    }),
    ...formal('05', 'instruments-valid', 'photos', 'order-of-facts'),
    criterion('06', 'profile', '5.6', 'Surface profile, each', {
      kind: 'each',
      quantity: 'profile',
      min: limit('65', 'um'),
      max: limit('115', 'um'),
    }),
    criterion('06', 'profile-count', '5.6', 'Surface profile, number of readings', {
      kind: 'count',
      quantity: 'profile',
      atLeast: 8,
    }),
    ...formal('06', 'instruments-valid', 'photos', 'order-of-facts'),
    ...climate('07'),
    ...formal('07', 'instruments-valid', 'photos'),
    criterion('09', 'watch', '7.2', 'Leak watch, dry for the whole time', {
      kind: 'window',
      start: 'watch-start',
      end: 'watch-end',
      startPoint: '09',
      endPoint: '09',
      minMinutes: decimal('22'),
    }),
    criterion('09', 'wipe', '7.3', 'White wipe dry', { kind: 'yes', flag: 'wipe-dry' }),
    criterion('09', 'flash-rust', '7.4', 'Free of flash rust', { kind: 'yes', flag: 'free-of-flash-rust' }),
    ...formal('09', 'photos', 'order-of-facts'),
  ]
}

function climate(point: string): CriterionText[] {
  return [
    criterion(point, 'steel', '6.1', 'Steel temperature, each place', {
      kind: 'each',
      quantity: 'steel-temp',
      min: limit('7', 'degC'),
      max: limit('38', 'degC'),
    }),
    criterion(point, 'humidity', '6.2', 'Relative humidity', {
      kind: 'each',
      quantity: 'humidity',
      max: limit('84', '%'),
    }),
    criterion(point, 'margin', '6.3', 'Steel above dew point', {
      kind: 'each',
      quantity: 'dew-margin',
      min: limit('3.0', 'K'),
    }),
  ]
}

/** Points 10 to 13: filler and the re-check. */
const FILLER: CriterionText[] = [
  criterion('10', 'ratio', '8.1', 'Filler, part B to 100 of part A by mass', {
    kind: 'ratio',
    partBPer100: decimal('38'),
    tolerance: decimal('1.5'),
  }),
  criterion('10', 'colour', '8.2', 'Filler mixed to one colour', { kind: 'yes', flag: 'colour-uniform' }),
  ...formal('10', 'batches-valid', 'persons-qualified', 'instruments-valid', 'photos', 'order-of-facts'),
  criterion('11', 'over-hole', '8.3', 'Filler over the hole', {
    kind: 'each',
    quantity: 'filler-over-hole',
    min: limit('7.0', 'mm'),
  }),
  criterion('11', 'over-hole-count', '8.3', 'Filler over the hole, number of readings', {
    kind: 'count',
    quantity: 'filler-over-hole',
    atLeast: 1,
  }),
  criterion('11', 'on-ring', '8.4', 'Filler on the ring of marks, each', {
    kind: 'each',
    quantity: 'filler-on-ring',
    min: limit('3.0', 'mm'),
  }),
  criterion('11', 'on-ring-count', '8.4', 'Filler on the ring, number of marks', {
    kind: 'count',
    quantity: 'filler-on-ring',
    atLeast: 8,
  }),
  criterion('11', 'smooth', '8.5', 'Smooth, without a step', { kind: 'yes', flag: 'smooth' }),
  criterion('11', 'climate', '6.4', 'Climate reading to filler', {
    kind: 'window',
    start: 'climate-taken',
    end: 'filler-placed',
    endPoint: '11',
    maxMinutes: decimal(CLIMATE_VALID),
    pick: 'latest',
  }),
  ...formal('11', 'instruments-valid', 'photos', 'order-of-facts'),
  criterion('12', 'hardness', '8.6', 'Filler hardness, each', {
    kind: 'each',
    quantity: 'filler-hardness',
    min: limit('66', 'ShoreD'),
  }),
  criterion('12', 'hardness-count', '8.6', 'Filler hardness, number of readings', {
    kind: 'count',
    quantity: 'filler-hardness',
    atLeast: 3,
  }),
  criterion('12', 'no-weep', '8.7', 'No weep', { kind: 'yes', flag: 'no-weep' }),
  ...formal('12', 'instruments-valid', 'photos', 'order-of-facts'),
  criterion('13', 'reswept', '9.1', 'Swept and wiped again', { kind: 'yes', flag: 'reswept' }),
  criterion('13', 'dry', '9.2', 'Dry', { kind: 'yes', flag: 'dry' }),
  criterion('13', 'flash-rust', '9.3', 'Free of flash rust', { kind: 'yes', flag: 'free-of-flash-rust' }),
  criterion('13', 'stations', '9.4', 'Stations of start and finish marked', { kind: 'yes', flag: 'stations-marked' }),
  ...climate('13'),
  ...formal('13', 'instruments-valid', 'photos'),
]

/** Point 14, both wraps: the windows that end at the first wrap, and the formal criteria. */
const WRAP: CriterionText[] = [
  criterion('14', 'prep-window', '5.7', 'Preparation finished to first wrap resin', {
    kind: 'window',
    start: 'prep-finished',
    end: 'first-wrap-resin',
    startPoint: '05',
    endPoint: '14',
    maxMinutes: decimal(PREP_TO_WRAP),
    pick: 'latest',
  }),
  criterion('14', 'climate', '6.4', 'Climate reading to first wrap resin', {
    kind: 'window',
    start: 'climate-taken',
    end: 'first-wrap-resin',
    endPoint: '14',
    maxMinutes: decimal(CLIMATE_VALID),
    pick: 'latest',
  }),
  ...formal('14', 'batches-valid', 'persons-qualified', 'instruments-valid', 'photos', 'order-of-facts'),
]

/** Points 16 to 20 with the hardness that the system was qualified at. */
function afterCure(each: string, mean: string): CriterionText[] {
  return [
    criterion('16', 'each', '11.1', 'Laminate hardness, each mark', {
      kind: 'each',
      quantity: 'hardness',
      min: limit(each, 'ShoreD'),
    }),
    criterion('16', 'mean', '11.2', 'Laminate hardness, mean', {
      kind: 'mean',
      quantity: 'hardness',
      min: limit(mean, 'ShoreD'),
    }),
    criterion('16', 'count', '11.3', 'Laminate hardness, number of marks', {
      kind: 'count',
      quantity: 'hardness',
      atLeast: 20,
    }),
    ...formal('16', 'instruments-valid', 'photos', 'order-of-facts'),
    criterion('17', 'thickness', '12.1', 'Laminate thickness, each mark', {
      kind: 'each',
      quantity: 'laminate-thickness',
      min: ofDesign('minThickness'),
    }),
    criterion('17', 'thickness-count', '12.1', 'Laminate thickness, number of marks', {
      kind: 'count',
      quantity: 'laminate-thickness',
      atLeast: 20,
    }),
    criterion('17', 'length', '12.2', 'Total length as designed', {
      kind: 'each',
      quantity: 'total-length',
      min: ofDesign('totalLength'),
    }),
    criterion('17', 'taper', '12.3', 'Taper as designed, each end', {
      kind: 'each',
      quantity: 'taper',
      min: ofDesign('taper'),
    }),
    criterion('17', 'tap', '12.4', 'Tapped over the whole area', { kind: 'yes', flag: 'tap-tested' }),
    criterion('17', 'findings', '12.5', 'Findings within the table of what is allowed', {
      kind: 'findings',
      allowed: [{ finding: 'resin run', maxSize: decimal('10') }],
    }),
    ...formal('17', 'instruments-valid', 'photos'),
    criterion('18', 'pressure', '13.1', 'Test pressure, each reading: 1.1 times the design pressure', {
      kind: 'each',
      quantity: 'test-pressure',
      min: ofDesign('designPressure', '1.1'),
    }),
    criterion('18', 'drop', '13.2', 'Pressure drop over the test after correction for steel temperature', {
      kind: 'pressure-drop',
      maxDrop: decimal('0.020'),
      minMinutes: decimal('75'),
      correction: {
        modulusMPa: decimal('207000'),
        poisson: decimal('0.3'),
        alphaPerK: 1.2e-5,
        betaPerK: 1.7e-4,
        bulkModulusMPa: decimal('2180'),
        ends: 'free',
      },
    }),
    criterion('18', 'no-leak', '13.3', 'No weep under test', { kind: 'yes', flag: 'no-leak' }),
    ...formal('18', 'instruments-valid', 'photos', 'order-of-facts'),
    criterion('19', 'label', '14.1', 'Label fixed', { kind: 'yes', flag: 'label-fixed' }),
    ...formal('19', 'photos'),
    criterion('20', 'label-fixed', '14.1', 'Label fixed', { kind: 'yes', flag: 'label-fixed' }),
    criterion('20', 'label-readable', '14.2', 'Label readable in place', { kind: 'yes', flag: 'label-readable' }),
    ...formal('20', 'photos'),
  ]
}

/** The parts that both demo specifications share, each for its own wording of grades and hardness. */
export const COMMON = { beforeWork: BEFORE_WORK, surface, filler: FILLER, wrap: WRAP, afterCure } as const
