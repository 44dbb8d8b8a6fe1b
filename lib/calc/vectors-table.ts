import { calibrationCovers, calibrationStatus } from '@/lib/calc/calibration'
import { clampBandCount, clampBandLength } from '@/lib/calc/clamp-band'
import { cleanlinessMeets, compareCleanliness, parseCleanliness } from '@/lib/calc/cleanliness-grade'
import { climateMargin } from '@/lib/calc/climate-margin'
import { cureProgress } from '@/lib/calc/cure-progress'
import { combineUncertainty, conformanceProbability, decisionRule } from '@/lib/calc/decision-rule'
import { dewPoint } from '@/lib/calc/dew-point'
import { flashRustMeets } from '@/lib/calc/flash-rust'
import { type Gs1Date, gs1Date } from '@/lib/calc/gs1-date'
import { parseGs1 } from '@/lib/calc/gs1-elements'
import { gtinCheckDigit, gtinMeets } from '@/lib/calc/gtin'
import { hardnessRequiredCount, hardnessSameScale, hardnessStatistics, hardnessVerdict } from '@/lib/calc/hardness'
import { allowableStrain, laminateByStrain, laminateByStress, laminateWithoutPipe } from '@/lib/calc/laminate-design'
import { laminateBondLength, laminateOverlap, laminateTotalLength } from '@/lib/calc/laminate-overlap'
import type { Sha256 } from '@/lib/calc/merkle-tree'
import { monthsLater } from '@/lib/calc/months-later'
import { pressureHoldGas, pressureHoldLiquid, pressureHoldSimple } from '@/lib/calc/pressure-hold'
import { comparatorBand, comparatorGrade } from '@/lib/calc/profile-comparator'
import { isRefused, type Refusal } from '@/lib/calc/refusal'
import { saltAllowedRise, saltDensity } from '@/lib/calc/salt-density'
import { shelfLife } from '@/lib/calc/shelf-life'
import { profileVerdict, replicaProfile } from '@/lib/calc/surface-profile'
import { thicknessByGirth, thicknessDirect } from '@/lib/calc/thickness'
import { thicknessMap } from '@/lib/calc/thickness-map'
import { thicknessPoints } from '@/lib/calc/thickness-points'
import { thicknessSpots } from '@/lib/calc/thickness-spots'
import { leakPressure, leakThickness } from '@/lib/calc/through-wall-leak'
import { recordFormulas } from '@/lib/calc/vectors-records'
import { dewPointFromWetBulb } from '@/lib/calc/wet-bulb'
import { potLife } from '@/lib/calc/working-time'
import { wrapOverlap, wrapPitch, wrapPliesAt, wrapThickness } from '@/lib/calc/wrap-geometry'
import { wrapLength, wrapMinPlies, wrapRolls } from '@/lib/calc/wrap-length'

/** Named arguments of a reference case, as read from a file. */
export type RawArguments = Readonly<Record<string, unknown>>
export type ReferenceFunction = (raw: RawArguments) => unknown

interface Named<Answer> {
  readonly byReferenceName: (raw: RawArguments) => Answer | Refusal
}

/** The reference function of a formula, its answer shown under the reference's keys. */
function shown<Answer>(computation: Named<Answer>, show: (answer: Answer) => unknown): ReferenceFunction {
  return (raw) => {
    const answer = computation.byReferenceName(raw)
    return isRefused(answer) ? answer : show(answer)
  }
}

/** As {@link shown}, with the keys that differ; `isMet` is the reference's `ok`, other keys keep their name. */
function renamed<Answer extends object>(
  computation: Named<Answer>,
  names: { readonly [Key in keyof Answer]?: string } = {},
): ReferenceFunction {
  const known: Readonly<Record<string, string | undefined>> = { isMet: 'ok', ...names }
  return shown(computation, (answer) =>
    Object.fromEntries(Object.entries(answer).map(([key, value]) => [known[key] ?? key, value])),
  )
}

const DESIGN = { hoopMm: 'hoop_mm', axialMm: 'axial_mm', governsMm: 'governs_mm' }

const showDate = (date: Gs1Date) => ({
  date: date.date,
  first: date.first,
  last: date.last,
  day_given: date.isDayGiven,
})

const showGs1 = (read: Exclude<ReturnType<typeof parseGs1>, Refusal>) => ({
  elements: read.elements,
  ...(read.expiry === null ? {} : { date_17: showDate(read.expiry) }),
  ...(read.production === null ? {} : { date_11: showDate(read.production) }),
})

/** Every function that the reference cases name, by its name there. Digests come in as `sha256`. */
export function vectorsTable(sha256: Sha256): Readonly<Record<string, ReferenceFunction>> {
  return {
    'climate.dew_point_rh': renamed(dewPoint, {
      dewPointC: 'dew_point_C',
      frostPointC: 'frost_point_C',
      vapourHpa: 'vapour_hPa',
    }),
    'climate.dew_point_wet': renamed(dewPointFromWetBulb, {
      dewPointC: 'dew_point_C',
      rhPct: 'rh_pct',
      vapourHpa: 'vapour_hPa',
    }),
    'climate.margin': renamed(climateMargin, { dewPointC: 'dew_point_C', marginK: 'margin_K' }),
    'profile.replica': renamed(replicaProfile, {
      netUm: 'net_um',
      meanUm: 'mean_um',
      sdUm: 'sd_um',
      rangeUm: 'range_um',
    }),
    'profile.comparator': renamed(comparatorGrade),
    'profile.segment_band': renamed(comparatorBand, {
      fromUm: 'from_um',
      belowUm: 'below_um',
      fromToleranceUm: 'from_tol_um',
      belowToleranceUm: 'below_tol_um',
    }),
    'profile.verdict': renamed(profileVerdict, {
      meanUm: 'mean_um',
      isMeanMet: 'mean_ok',
      isEachMet: 'each_ok',
      lowAt: 'low_at',
      highAt: 'high_at',
    }),
    'salt.density': renamed(saltDensity, { mgPerM2: 'mg_per_m2', ugPerCm2: 'ug_per_cm2', deltaUscm: 'delta_uScm' }),
    'salt.allowed_delta': renamed(saltAllowedRise, { deltaUscm: 'delta_uScm' }),
    'clean.parse': renamed(parseCleanliness),
    'clean.compare': renamed(compareCleanliness),
    'clean.meets': renamed(cleanlinessMeets, { isAgreementPresent: 'agreement_present' }),
    'clean.flash_rust': renamed(flashRustMeets),
    'time.pot_life': renamed(potLife, { lifeMin: 'life_min', remainingMin: 'remaining_min' }),
    'time.cure_progress': renamed(cureProgress, { isCured: 'cured', doneAt: 'done_at' }),
    'thick.direct': renamed(thicknessDirect, { minMm: 'min_mm', meanMm: 'mean_mm', lowAt: 'low_at' }),
    'thick.girth': renamed(thicknessByGirth, { meanMm: 'mean_mm', isMinimum: 'is_minimum', uMm: 'u_mm' }),
    'thick.spots': renamed(thicknessSpots, { spotMeans: 'spot_means', areaMean: 'area_mean' }),
    'thick.points': renamed(thicknessPoints, { axialStepMm: 'axial_step_mm', aroundStepMm: 'around_step_mm' }),
    'thick.map': renamed(thicknessMap),
    'wrap.overlap': renamed(wrapOverlap, {
      overlapMm: 'overlap_mm',
      pliesMean: 'plies_mean',
      pliesMin: 'plies_min',
      pliesMax: 'plies_max',
    }),
    'wrap.pitch': renamed(wrapPitch, { pitchMm: 'pitch_mm' }),
    'wrap.plies_at': renamed(wrapPliesAt),
    'wrap.total': renamed(wrapThickness, { thicknessMm: 'thickness_mm' }),
    'wrap.length': renamed(wrapLength, {
      lengthMm: 'length_mm',
      turnsPerPass: 'turns_per_pass',
      perPassMm: 'per_pass_mm',
      finalDiameterMm: 'final_diameter_mm',
    }),
    'wrap.rolls': renamed(wrapRolls, { needMm: 'need_mm' }),
    'wrap.min_plies': renamed(wrapMinPlies, { thicknessMm: 'thickness_mm' }),
    'hard.stats': renamed(hardnessStatistics),
    'hard.required_count': renamed(hardnessRequiredCount),
    'hard.verdict': renamed(hardnessVerdict, {
      isCountMet: 'count_ok',
      isMeanMet: 'mean_ok',
      isMedianMet: 'median_ok',
      isEachMet: 'each_ok',
      lowAt: 'low_at',
    }),
    'hard.same_scale': shown(hardnessSameScale, (answer) => answer.isSame),
    'design.stress': renamed(laminateByStress, DESIGN),
    'design.strain': renamed(laminateByStrain, DESIGN),
    'design.strain_no_pipe': renamed(laminateWithoutPipe, DESIGN),
    'design.allowable_strain': renamed(allowableStrain),
    'design.leak_pressure': renamed(leakPressure, { pressureMpa: 'P_MPa', limitMpa: 'P_limit_MPa' }),
    'design.leak_thickness': renamed(leakThickness, {
      thicknessMm: 't_mm',
      limitMpa: 'P_limit_MPa',
      isValid: 'valid',
    }),
    'design.overlap': renamed(laminateOverlap, { overlapMm: 'overlap_mm' }),
    'design.overlap_bond': renamed(laminateBondLength, { overlapMm: 'overlap_mm' }),
    'design.total_length': renamed(laminateTotalLength, { taperMm: 'taper_mm', totalMm: 'total_mm' }),
    'clamp.band': renamed(clampBandLength, { lengthMm: 'length_mm' }),
    'clamp.count': renamed(clampBandCount, { stepMm: 'step_mm' }),
    'hold.simple': renamed(pressureHoldSimple),
    'hold.liquid': renamed(pressureHoldLiquid, {
      mpaPerK: 'MPa_per_K',
      expectedMpa: 'expected_MPa',
      dropMpa: 'drop_MPa',
    }),
    'hold.gas': renamed(pressureHoldGas, { expectedGauge: 'expected_gauge', massLostFraction: 'mass_lost_fraction' }),
    'decide.rule': renamed(decisionRule, { isAcceptanceZoneEmpty: 'acceptance_zone_empty' }),
    'decide.probability': renamed(conformanceProbability),
    'decide.combine': renamed(combineUncertainty, { expandedU: 'U' }),
    'gs1.check_digit': renamed(gtinCheckDigit),
    'gs1.gtin_ok': renamed(gtinMeets),
    'gs1.date': shown(gs1Date, showDate),
    'gs1.parse': shown(parseGs1, showGs1),
    'dates.add_months': renamed(monthsLater),
    'dates.shelf': renamed(shelfLife, { lastDay: 'last_day', daysLeft: 'days_left' }),
    'dates.calibration': renamed(calibrationStatus, { dueDay: 'due', daysLeft: 'days_left' }),
    'dates.covers': renamed(calibrationCovers, { isCovered: 'ok' }),
    ...recordFormulas(sha256),
  }
}
