import { number } from '@/lib/calc/argument'
import { isAbove, isAtMost, isBelow } from '@/lib/calc/comparison'
import { formula } from '@/lib/calc/formula'
import { refuse } from '@/lib/calc/refusal'

/** Vapour pressure at which dew point and frost point meet, hPa. */
const VAPOUR_AT_ZERO_HPA = 6.112

/** Saturation vapour pressure over liquid water, hPa, t in degC. WMO-No. 8, Annex 4.B; -45..60 degC. Confidence high. */
export function saturationOverWaterHpa(tC: number): number {
  return VAPOUR_AT_ZERO_HPA * Math.exp((17.62 * tC) / (243.12 + tC))
}

/** Saturation vapour pressure over ice, hPa, t in degC. WMO-No. 8, Annex 4.B; -65..0 degC. Confidence high. */
export function saturationOverIceHpa(tC: number): number {
  return VAPOUR_AT_ZERO_HPA * Math.exp((22.46 * tC) / (272.62 + tC))
}

/** Temperature in degC at which liquid water is in balance with the vapour pressure (hPa, above 0). Same source. */
export function dewPointOfVapourC(vapourHpa: number): number {
  const x = Math.log(vapourHpa / VAPOUR_AT_ZERO_HPA)
  return (243.12 * x) / (17.62 - x)
}

/** Temperature in degC at which ice is in balance with the vapour pressure (hPa), or null above 6.112 hPa. Same source. */
export function frostPointOfVapourC(vapourHpa: number): number | null {
  if (isAbove(vapourHpa, VAPOUR_AT_ZERO_HPA)) return null
  const x = Math.log(vapourHpa / VAPOUR_AT_ZERO_HPA)
  return (272.62 * x) / (22.46 - x)
}

/** True when the air temperature is inside the range of the coefficients, -45..60 degC, ends included. */
export function isInsideAirRange(tC: number): boolean {
  return !isBelow(tC, -45) && isAtMost(tC, 60)
}

/**
 * Dew point from air temperature (degC) and relative humidity over liquid water (%).
 * e = U/100 · 6.112 exp(17.62 t/(243.12 + t)); x = ln(e/6.112); Td = 243.12 x/(17.62 - x). Answers dew and frost point in
 * degC (frost null above 6.112 hPa) and vapour pressure in hPa.
 * Refuses `dry_out_of_range` beyond -45..60 degC, `rh_out_of_range` unless 0 < U <= 100.
 * @source WMO-No. 8, Annex 4.B. Confidence high. ISO 8502-4 tabulates; other sets differ by up to 0.33 K.
 */
export const dewPoint = formula({ dryC: number('dry_C'), rhPct: number('rh_pct') }, ({ dryC, rhPct }) => {
  if (!isInsideAirRange(dryC)) return refuse('dry_out_of_range')
  if (rhPct <= 0 || isAbove(rhPct, 100)) return refuse('rh_out_of_range')
  const vapourHpa = (rhPct / 100) * saturationOverWaterHpa(dryC)
  return { dewPointC: dewPointOfVapourC(vapourHpa), frostPointC: frostPointOfVapourC(vapourHpa), vapourHpa }
})
