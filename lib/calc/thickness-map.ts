import { list, number, optional } from '@/lib/calc/argument'
import { isAtLeast, isAtMost } from '@/lib/calc/comparison'
import { formula } from '@/lib/calc/formula'
import { type Refusal, refuse } from '@/lib/calc/refusal'

const TURN_DEG = 360

/** Two neighbouring stations or clock positions and how far the wanted place lies from the first to the second, 0..1. */
interface Bracket {
  readonly from: number
  readonly to: number
  readonly share: number
}

function isIncreasing(values: readonly number[]): boolean {
  return values.every((value, index) => {
    const before = values[index - 1]
    return before === undefined || value > before
  })
}

function bracketAxial(axialMm: readonly number[], xMm: number): Bracket | null {
  for (const [index, stationMm] of axialMm.entries()) {
    const before = axialMm[index - 1]
    if (isAtLeast(xMm, stationMm) && isAtMost(xMm, stationMm)) return { from: index, to: index, share: 0 }
    if (before !== undefined && xMm > before && xMm < stationMm) {
      return { from: index - 1, to: index, share: (xMm - before) / (stationMm - before) }
    }
  }
  return null
}

function bracketRing(anglesDeg: readonly number[], originDeg: number, angleDeg: number): Bracket {
  const columnsDeg = anglesDeg.map((columnDeg) => columnDeg - originDeg)
  const turned = (((angleDeg - originDeg) % TURN_DEG) + TURN_DEG) % TURN_DEG
  let [from, start] = [0, 0]
  for (const [index, columnDeg] of columnsDeg.entries()) if (columnDeg <= turned) [from, start] = [index, columnDeg]
  const end = columnsDeg.find((columnDeg) => columnDeg > turned) ?? TURN_DEG
  return { from, to: (from + 1) % anglesDeg.length, share: (turned - start) / (end - start) }
}

function blend(corners: ReadonlyArray<readonly [value: number | null | undefined, weight: number]>): number | Refusal {
  let sum = 0
  for (const [value, weight] of corners) {
    if (weight === 0) continue
    if (value === null || value === undefined) return refuse('missing_reading')
    sum += weight * value
  }
  return sum
}

/**
 * Value at a place of a map with rows at `axialMm` (increasing, mm) and columns at `anglesDeg` (increasing, less than one
 * turn): bilinear in x and angle, angle modulo 360 with the last column joined to the first.
 * A bilinear map never shows less than its smallest corner: it finds no hidden minimum.
 * Refuses `outside_grid` outside the axial range, `missing_reading` when a corner that counts is null, `axial_not_increasing`,
 * `angles_not_increasing`, `values_shape` when rows or columns do not match.
 * @source geometry. Confidence high.
 */
export const thicknessMap = formula(
  {
    axialMm: list('axial_mm', number('axial_mm')),
    anglesDeg: list('angles_deg', number('angles_deg')),
    values: list('values', list('values', optional(number('values')))),
    xMm: number('x_mm'),
    angleDeg: number('angle_deg'),
  },
  ({ axialMm, anglesDeg, values, xMm, angleDeg }) => {
    const [firstDeg, lastDeg] = [anglesDeg[0], anglesDeg.at(-1)]
    if (axialMm.length === 0 || firstDeg === undefined || lastDeg === undefined) return refuse('missing_reading')
    if (!isIncreasing(axialMm)) return refuse('axial_not_increasing')
    if (!isIncreasing(anglesDeg) || lastDeg - firstDeg >= TURN_DEG) return refuse('angles_not_increasing')
    if (values.length !== axialMm.length || values.some((row) => row.length !== anglesDeg.length))
      return refuse('values_shape')
    const along = bracketAxial(axialMm, xMm)
    if (along === null) return refuse('outside_grid')
    const round = bracketRing(anglesDeg, firstDeg, angleDeg)
    const value = blend([
      [values[along.from]?.[round.from], (1 - along.share) * (1 - round.share)],
      [values[along.from]?.[round.to], (1 - along.share) * round.share],
      [values[along.to]?.[round.from], along.share * (1 - round.share)],
      [values[along.to]?.[round.to], along.share * round.share],
    ])
    return typeof value === 'number' ? { value } : value
  },
)
