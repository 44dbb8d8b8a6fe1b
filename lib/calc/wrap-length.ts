import { defaulted, notNegative, optional, positive, whole } from '@/lib/calc/argument'
import { isAbove, roundDown, roundUp } from '@/lib/calc/comparison'
import { formula } from '@/lib/calc/formula'
import { refuse } from '@/lib/calc/refusal'

/**
 * Length of band in mm for a spiral wrap over `axialMm`. Pass i lies at D_m = D0 + (2i - 1) t_pass, t_pass = t_ply b/p;
 * it has (L - b)/p turns of sqrt((pi D_m)² + p²), plus `endTurns` turns of pi D_m (medium).
 * Refuses `band_wider_than_repair` when L < b, `gap_between_turns` when p > b. @source geometry. Confidence high.
 */
export const wrapLength = formula(
  {
    diameterMm: positive('diameter_mm'),
    axialMm: positive('axial_mm'),
    bandMm: positive('band_mm'),
    pitchMm: positive('pitch_mm'),
    plyMm: positive('ply_mm'),
    passes: defaulted(whole('passes', 1), 1),
    endTurns: defaulted(notNegative('end_turns'), 0),
  },
  ({ diameterMm, axialMm, bandMm, pitchMm, plyMm, passes, endTurns }) => {
    if (isAbove(pitchMm, bandMm)) return refuse('gap_between_turns')
    if (isAbove(bandMm, axialMm)) return refuse('band_wider_than_repair')
    const passMm = (plyMm * bandMm) / pitchMm
    const spiralTurns = Math.max(0, axialMm - bandMm) / pitchMm
    const perPassMm = Array.from({ length: passes }, (_, index) => {
      const girthMm = Math.PI * (diameterMm + (2 * index + 1) * passMm)
      return spiralTurns * Math.hypot(girthMm, pitchMm) + endTurns * girthMm
    })
    return {
      lengthMm: perPassMm.reduce((sum, length) => sum + length, 0),
      turnsPerPass: spiralTurns + endTurns,
      perPassMm,
      finalDiameterMm: diameterMm + 2 * passes * passMm,
    }
  },
)

/**
 * Rolls for a length with a wastage fraction: ceil(length (1 + w) / roll length), mm. The short remainder of each roll is
 * inside the wastage, not modelled. Refuses `missing_roll_length_mm`. @source geometry. Confidence high.
 */
export const wrapRolls = formula(
  {
    lengthMm: notNegative('length_mm'),
    rollLengthMm: positive('roll_length_mm'),
    wastage: defaulted(notNegative('wastage'), 0),
  },
  ({ lengthMm, rollLengthMm, wastage }) => {
    const needMm = lengthMm * (1 + wastage)
    return { needMm, rolls: roundUp(needMm / rollLengthMm) }
  },
)

/**
 * Plies for a design thickness in mm: max(n_min, ceil(t_design / t_ply)), their thickness, and with band and pitch the passes
 * ceil(plies / floor(b/p)), from the thinnest place. n_min is 2 by default (medium): an input.
 * Refuses `gap_between_turns`, and a band without a pitch or a pitch without a band. @source geometry. Confidence high.
 */
export const wrapMinPlies = formula(
  {
    designMm: notNegative('design_mm'),
    plyMm: positive('ply_mm'),
    atLeast: defaulted(whole('at_least', 1), 2),
    bandMm: optional(positive('band_mm')),
    pitchMm: optional(positive('pitch_mm')),
  },
  ({ designMm, plyMm, atLeast, bandMm, pitchMm }) => {
    const plies = Math.max(atLeast, roundUp(designMm / plyMm))
    const built = { plies, thicknessMm: plies * plyMm }
    if (bandMm === null && pitchMm === null) return { ...built, passes: null }
    if (bandMm === null) return refuse('missing_band_mm')
    if (pitchMm === null) return refuse('missing_pitch_mm')
    if (isAbove(pitchMm, bandMm)) return refuse('gap_between_turns')
    return { ...built, passes: roundUp(plies / roundDown(bandMm / pitchMm)) }
  },
)
