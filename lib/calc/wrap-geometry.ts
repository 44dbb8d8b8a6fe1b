import { defaulted, notNegative, number, positive, whole } from '@/lib/calc/argument'
import { isAbove, isAtLeast, isBelow, roundDown, roundUp } from '@/lib/calc/comparison'
import { formula } from '@/lib/calc/formula'
import { refuse } from '@/lib/calc/refusal'

/**
 * Overlap of a spiral wrap from band width and pitch (axial advance per turn), mm: o = 1 - p/b as a fraction, b - p in mm;
 * plies per pass: mean b/p, thinnest floor(b/p), thickest ceil(b/p). Use the thinnest for design.
 * Refuses `gap_between_turns` when the pitch exceeds the band.
 * @source geometry. Confidence high.
 */
export const wrapOverlap = formula(
  { bandMm: positive('band_mm'), pitchMm: positive('pitch_mm') },
  ({ bandMm, pitchMm }) => {
    if (isAbove(pitchMm, bandMm)) return refuse('gap_between_turns')
    const pliesMean = bandMm / pitchMm
    return {
      overlap: 1 - pitchMm / bandMm,
      overlapMm: bandMm - pitchMm,
      pliesMean,
      pliesMin: roundDown(pliesMean),
      pliesMax: roundUp(pliesMean),
    }
  },
)

/**
 * Pitch in mm for a wanted overlap fraction: p = b (1 - o). Refuses `overlap_out_of_range` unless 0 <= o < 1
 * (at 1 the wrap never advances).
 * @source geometry. Confidence high.
 */
export const wrapPitch = formula({ bandMm: positive('band_mm'), overlap: number('overlap') }, ({ bandMm, overlap }) => {
  if (overlap < 0 || isAtLeast(overlap, 1)) return refuse('overlap_out_of_range')
  return { pitchMm: bandMm * (1 - overlap) }
})

/**
 * Plies lying at `xMm` from the start edge: the number of turns k with k p <= x < k p + b, times the passes.
 * Fewer over the first and last b - p unless end turns are added. Outside the wrap: 0.
 * @source geometry. Confidence high.
 */
export const wrapPliesAt = formula(
  {
    bandMm: positive('band_mm'),
    pitchMm: positive('pitch_mm'),
    turns: whole('turns', 0),
    xMm: number('x_mm'),
    passes: defaulted(whole('passes', 1), 1),
  },
  ({ bandMm, pitchMm, turns, xMm, passes }) => {
    // Only turns whose start lies within one band before x can cover it; one turn of margin on each side for the slack.
    const first = Math.max(0, Math.floor((xMm - bandMm) / pitchMm) - 1)
    const last = Math.min(turns - 1, Math.ceil(xMm / pitchMm) + 1)
    let plies = 0
    for (let k = first; k <= last; k += 1) {
      if (isAtLeast(xMm, k * pitchMm) && isBelow(xMm, k * pitchMm + bandMm)) plies += 1
    }
    return { plies: plies * passes }
  },
)

/**
 * Thickness in mm of n plies with n - 1 bond layers: n t_ply + (n - 1) t_bond. Refuses `plies_not_whole`.
 * @source geometry. Confidence high.
 */
export const wrapThickness = formula(
  { plies: whole('plies', 1), plyMm: positive('ply_mm'), bondMm: defaulted(notNegative('bond_mm'), 0) },
  ({ plies, plyMm, bondMm }) => ({ thicknessMm: plies * plyMm + (plies - 1) * bondMm }),
)
