import { defaulted, notNegative, number, optional, positive } from '@/lib/calc/argument'
import { isAbove, isAtMost } from '@/lib/calc/comparison'
import { formula } from '@/lib/calc/formula'
import { refuse } from '@/lib/calc/refusal'

/** c for a salt mixture, kg/(m2 S): ISO 8502-9. Another salt needs its own value. */
const MIXTURE_FACTOR = 5

/**
 * Soluble salt by conductivity, as mixture and not as chloride: rho = 100 c V dG / A in mg/m2, ug/cm2 = rho/10.
 * Blank and reading in uS/cm, V extraction water in ml, A patch in mm2. Readings are corrected to `refC` only when
 * `alphaPerK` is given: G/(1 + a (T - ref)); most meters compensate already, so never twice (low).
 * `isMet` is null without a limit. Refuses `after_below_before`, `blank_too_high`, `missing_alpha_per_K`, `missing_temp_C`,
 * `correction_not_positive`, and missing, negative or zero inputs by name.
 * @source ISO 8502-6 (extraction), ISO 8502-9 (calculation). Confidence high.
 */
export const saltDensity = formula(
  {
    beforeUscm: notNegative('before_uScm'),
    afterUscm: notNegative('after_uScm'),
    volumeMl: positive('volume_ml'),
    areaMm2: positive('area_mm2'),
    factorC: defaulted(positive('factor_c'), MIXTURE_FACTOR),
    limitMgm2: optional(notNegative('limit_mgm2')),
    tempC: optional(number('temp_C')),
    alphaPerK: optional(notNegative('alpha_per_K')),
    refC: defaulted(number('ref_C'), 25),
    maxBlankUscm: optional(notNegative('max_blank_uScm')),
  },
  ({ beforeUscm, afterUscm, volumeMl, areaMm2, factorC, limitMgm2, tempC, alphaPerK, refC, maxBlankUscm }) => {
    if (maxBlankUscm !== null && isAbove(beforeUscm, maxBlankUscm)) return refuse('blank_too_high')
    if (afterUscm < beforeUscm) return refuse('after_below_before')
    if (tempC !== null && alphaPerK === null) return refuse('missing_alpha_per_K')
    if (tempC === null && alphaPerK !== null) return refuse('missing_temp_C')
    const correction = tempC === null || alphaPerK === null ? 1 : 1 + alphaPerK * (tempC - refC)
    if (correction <= 0) return refuse('correction_not_positive')
    const deltaUscm = (afterUscm - beforeUscm) / correction
    const mgPerM2 = (100 * factorC * volumeMl * deltaUscm) / areaMm2
    return {
      mgPerM2,
      ugPerCm2: mgPerM2 / 10,
      deltaUscm,
      isMet: limitMgm2 === null ? null : isAtMost(mgPerM2, limitMgm2),
    }
  },
)

/**
 * Rise in conductivity (uS/cm) that a salt limit (mg/m2) allows: rho A / (100 c V). The inverse of {@link saltDensity}.
 * @source ISO 8502-9. Confidence high.
 */
export const saltAllowedRise = formula(
  {
    limitMgm2: notNegative('limit_mgm2'),
    volumeMl: positive('volume_ml'),
    areaMm2: positive('area_mm2'),
    factorC: defaulted(positive('factor_c'), MIXTURE_FACTOR),
  },
  ({ limitMgm2, volumeMl, areaMm2, factorC }) => ({ deltaUscm: (limitMgm2 * areaMm2) / (100 * factorC * volumeMl) }),
)
