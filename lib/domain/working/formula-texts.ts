import type { Criterion, RuleKind } from '../specification'

export type FormulaText = { formula: string; source: string }

/** How each kind of rule is computed, and after whom. Clause numbers of standards are the specification's to give. */
const BY_KIND: Record<RuleKind, FormulaText> = {
  each: {
    formula: 'every reading x: min ≤ x ≤ max, each by itself, on the digits as recorded',
    source: 'the specification’s limit; exact decimals, no rounding before the comparison',
  },
  mean: {
    formula: 'mean = (x₁ + x₂ + … + xₙ) / n, as an exact fraction; min ≤ mean ≤ max',
    source: 'arithmetic mean; the specification’s limit. Confidence high',
  },
  count: {
    formula: 'n = readings taken; n ≥ number demanded. No access, not inspected and not applicable are not taken',
    source: 'the specification’s number of readings',
  },
  grade: {
    formula: 'grade found ≥ grade demanded in the order of its own family: St 2 < St 3; Sa 1 < Sa 2 < Sa 2½ < Sa 3',
    source: 'ISO 8501-1, ISO 8501-4; grades of different families are not comparable. Confidence high',
  },
  yes: { formula: 'every statement says yes; nothing stated proves nothing', source: 'the specification' },
  no: { formula: 'every statement says no; nothing stated proves nothing', source: 'the specification' },
  window: {
    formula: 'time = end − start, on the times as observed; min ≤ time ≤ max',
    source: 'the specification’s window; a known clock error that would change the outcome makes it not proven',
  },
  ratio: {
    formula: 'B per 100 A = mass B / mass A × 100; |ratio − demanded| ≤ tolerance, as exact fractions',
    source: 'the specification’s ratio by mass; by volume is another number',
  },
  'working-time': {
    formula:
      'time used = end of use − start of mix or soak ≤ τ(T). Step table: τ of the first row at or above T. Interpolated: u = (1/(T+273.15) − 1/(T₁+273.15)) / (1/(T₂+273.15) − 1/(T₁+273.15)), ln τ = ln τ₁ + u (ln τ₂ − ln τ₁)',
    source:
      'the maker’s table; Arrhenius form between rows, textbook. Confidence medium; holds for the table’s own batch size',
  },
  'hardening-time': {
    formula:
      'judged hard − pressed on ≥ τ(T) at the ambient temperature. Step table: τ of the colder row. Interpolated: ln τ = ln τ₁ + u (ln τ₂ − ln τ₁), u linear in 1/(T+273.15)',
    source: 'the maker’s table; Arrhenius form between rows, textbook. Confidence medium',
  },
  'plug-amount': {
    formula: 'needed = π/4 × hole axial × hole hoop × nominal wall × factor; used ≥ needed',
    source: 'ellipse through the wall, geometry; the factor is the specification’s. Confidence high',
  },
  'band-length': {
    formula: 'needed = mean girth + 2π (build + band thickness / 2) + tail; cut ≥ needed, tail ≥ least tail',
    source: 'geometry; the tail is the specification’s. Confidence high',
  },
  'tape-start': {
    formula: 'start before the leak ≥ share × total length as designed',
    source: 'the specification and the design sheet',
  },
  'cure-hold': {
    formula:
      'longest unbroken time with T ≥ T least, T linear between logged points, at every logged clock position ≥ hours',
    source: 'the specification’s time and temperature, judged at every probe; the coldest governs',
  },
  'cure-equivalent': {
    formula: 'X = ∫ dt / τ(T(t)), T linear between logged points, τ by Arrhenius between the rows; cured at X ≥ 1',
    source:
      'additivity of one rate law, textbook. Confidence medium: vitrification breaks it, a hardness test still decides',
  },
  'pressure-drop': {
    formula:
      'expected = p₀ + dP/dT (T₁ − T₀), dP/dT = (β − a) / (1/K + c D / (E t)); ends free: a = 3 α, c = 5/4 − ν; ends anchored: a = 2 (1 + ν) α, c = 1 − ν². drop = expected − p₁ ≤ allowed; a rise above it is not explained and does not pass',
    source:
      'thin-cylinder strains with the specification’s figures. High as mechanics; β of water moves fast with temperature (medium); trapped air breaks it',
  },
  findings: {
    formula: 'every finding is of a kind that is allowed, and its size ≤ the size allowed',
    source: 'the specification’s table of findings',
  },
  'design-envelope': {
    formula:
      'as found against the design sheet’s input: hole ≤ most, diameter between its bounds, wall at the band’s edge ≥ least',
    source: 'the design sheet’s envelope; outside it the engineer designs again',
  },
  plies: {
    formula:
      'plies by each person’s count = plies designed; wet lay-up: plies recorded; tape: passes × floor(width / widest pitch) ≥ designed',
    source: 'geometry; the thinnest place of a pass counts. Confidence high',
  },
  'instruments-valid': {
    formula: 'calibrated on ≤ day of use ≤ due on, and the certificate’s range covers the reading',
    source: 'the certificate in force on the day of use; last day included',
  },
  'batches-valid': {
    formula:
      'day of use ≤ the earliest of printed expiry, made + life, opened + opened life; not recalled, not in quarantine',
    source: 'label, maker’s letter and stock record; the last good day is included',
  },
  'persons-qualified': {
    formula:
      'valid from ≤ day of work ≤ valid to, for the task and geometry; or worked under a qualified supervisor, said so',
    source: 'the qualification in force on the day',
  },
  'permit-valid': { formula: 'permit from ≤ work ≤ permit to', source: 'the permit as recorded' },
  photos: { formula: 'photos of each demand, not counting those not accepted ≥ number demanded', source: 'the plan' },
  'order-of-facts': {
    formula: 'each step is observed no earlier than the step before it',
    source: 'the order of the work',
  },
}

const DEW: FormulaText = {
  formula:
    'x = ln(U/100) + 17.62 t / (243.12 + t); Td = 243.12 x / (17.62 − x); margin = steel − Td, at each place of the steel',
  source: 'WMO-No. 8, Annex 4.B, coefficients 17.62 and 243.12; −45 to 60 °C, 0 < U ≤ 100 %. Confidence high',
}
const FILLER: FormulaText = {
  formula: 'filler = height after − height before, at each mark, exactly',
  source: 'difference of two readings with one gauge',
}

const BY_QUANTITY: Partial<Record<string, FormulaText>> = {
  'dew-margin': DEW,
  'dew-point': DEW,
  'filler-over-hole': FILLER,
  'filler-on-ring': FILLER,
  'tape-overlap': {
    formula: 'overlap = (1 − pitch / width) × 100 %, at each place',
    source: 'geometry. Confidence high',
  },
  salts: {
    formula: 'ρ = 100 c V (after − blank) / A where conductivities were read; every ρ ≤ the limit',
    source: 'ISO 8502-6, ISO 8502-9; as mixture of salts by conductivity. Confidence high',
  },
  profile: {
    formula: 'h = reading (net of the film); every h between the bounds',
    source: 'ISO 8503-5; the band is the specification’s. Confidence high',
  },
}

/** Formula and source of a criterion: that of its quantity where the figure is computed, else that of its kind of rule. */
export function formulaTextOf({ rule }: Pick<Criterion, 'rule'>): FormulaText {
  const own = rule.kind === 'each' && 'quantity' in rule ? BY_QUANTITY[rule.quantity] : undefined
  if (!own) return BY_KIND[rule.kind]
  return { formula: `${own.formula}; ${BY_KIND[rule.kind].formula}`, source: own.source }
}
