import { list, missingAs, number, optional } from '@/lib/calc/argument'
import { isAtLeast } from '@/lib/calc/comparison'
import { dewPoint } from '@/lib/calc/dew-point'
import { formula } from '@/lib/calc/formula'
import { isRefused, refuse } from '@/lib/calc/refusal'

/**
 * Margin of the coldest surface reading (degC) over the dew point, in K: m = min(surface) - Td; met when m >= required.
 * `isMet` is null when no required margin is given: it comes from the specification.
 * Refuses `no_readings` without a surface reading, and what {@link dewPoint} refuses.
 * @source the dew point of WMO-No. 8; practice of ISO 8502-4. Confidence high.
 */
export const climateMargin = formula(
  {
    surfaceC: missingAs('no_readings', list('surface_C', number('surface_C'))),
    dryC: number('dry_C'),
    rhPct: number('rh_pct'),
    requiredK: optional(number('required_K')),
  },
  ({ surfaceC, dryC, rhPct, requiredK }) => {
    if (surfaceC.length === 0) return refuse('no_readings')
    const dew = dewPoint({ dryC, rhPct })
    if (isRefused(dew)) return dew
    const marginK = Math.min(...surfaceC) - dew.dewPointC
    return { dewPointC: dew.dewPointC, marginK, isMet: requiredK === null ? null : isAtLeast(marginK, requiredK) }
  },
)
