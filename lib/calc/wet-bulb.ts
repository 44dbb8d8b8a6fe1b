import { defaulted, flag, number } from '@/lib/calc/argument'
import { isAbove, isAtMost, isBelow } from '@/lib/calc/comparison'
import { dewPointOfVapourC, isInsideAirRange, saturationOverIceHpa, saturationOverWaterHpa } from '@/lib/calc/dew-point'
import { formula } from '@/lib/calc/formula'
import { refuse } from '@/lib/calc/refusal'

/**
 * Dew point (degC), relative humidity (%) and vapour pressure (hPa) from dry and wet bulb (degC) and air pressure (hPa).
 * e = f e_w(tw) - 6.53e-4 (1 + 0.000944 tw) p (t - tw); iced bulb e = f e_i(tw) - 5.75e-4 p (t - tw); dew point of e/f, which is the
 * vapour pressure given.
 * f = 1, or 1.0016 + 3.15e-6 p - 0.074/p when `enhancement` is set. Ventilated instruments only, about 3 m/s over the bulb.
 * Refuses `missing_pressure_hPa`, `pressure_out_of_range` beyond 500..1100 hPa, `dry_out_of_range`, `wet_out_of_range`,
 * `wet_above_dry` (swapped readings or a dry wick), `iced_above_zero`, `vapour_not_positive` (the pair is impossible).
 * @source WMO-No. 8, Annex 4.B. Confidence high, iced bulb medium.
 */
export const dewPointFromWetBulb = formula(
  {
    dryC: number('dry_C'),
    wetC: number('wet_C'),
    pressureHpa: number('pressure_hPa'),
    iced: defaulted(flag('iced'), false),
    enhancement: defaulted(flag('enhancement'), false),
  },
  ({ dryC, wetC, pressureHpa: p, iced, enhancement }) => {
    if (isBelow(p, 500) || isAbove(p, 1100)) return refuse('pressure_out_of_range')
    if (!isInsideAirRange(dryC)) return refuse('dry_out_of_range')
    if (isAbove(wetC, dryC)) return refuse('wet_above_dry')
    if (!isInsideAirRange(wetC)) return refuse('wet_out_of_range')
    if (iced && !isAtMost(wetC, 0)) return refuse('iced_above_zero')
    const f = enhancement ? 1.0016 + 3.15e-6 * p - 0.074 / p : 1
    const vapourHpa = iced
      ? f * saturationOverIceHpa(wetC) - 5.75e-4 * p * (dryC - wetC)
      : f * saturationOverWaterHpa(wetC) - 6.53e-4 * (1 + 0.000944 * wetC) * p * (dryC - wetC)
    if (vapourHpa <= 0) return refuse('vapour_not_positive')
    const pureVapourHpa = vapourHpa / f
    return {
      dewPointC: dewPointOfVapourC(pureVapourHpa),
      rhPct: (100 * pureVapourHpa) / saturationOverWaterHpa(dryC),
      vapourHpa: pureVapourHpa,
    }
  },
)
