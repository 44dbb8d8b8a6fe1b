const NAMES: Readonly<Record<string, string>> = {
  D_mm: 'the outside diameter',
  diameter_mm: 'the outside diameter',
  s_MPa: 'the allowed stress of the pipe',
  P_MPa: 'the design pressure',
  Ps_MPa: 'the pressure that the thinned pipe may carry',
  F_N: 'the axial force',
  Es_MPa: 'the modulus of the pipe',
  Ec_MPa: 'the modulus of the laminate round the pipe',
  Ea_MPa: 'the modulus of the laminate along the pipe',
  ts_mm: 'the least wall left',
  eps_c: 'the allowed strain round the pipe',
  eps_a: 'the allowed strain along the pipe',
  live_MPa: 'the pressure in the pipe during application',
  nu_ca: 'Poisson’s ratio of the laminate',
  nu: 'Poisson’s ratio of the laminate',
  base: 'the strain of the standard’s table',
  f_T: 'the temperature factor',
  dT_K: 'the rise of temperature',
  alpha_pipe: 'the expansion of the pipe',
  alpha_lam: 'the expansion of the laminate',
  wall_mm: 'the wall of the pipe',
  form: 'the choice of the overlap’s form',
  pipe_case: 'the choice how the pipe is counted',
  defect_kind: 'the kind of the defect',
  t_mm: 'the thickness of the laminate',
  tau_MPa: 'the lap shear strength',
  factor: 'the factor of the bond length',
  defect_mm: 'the length of the defect',
  overlap_mm: 'the overlap',
  laminate_mm: 'the thickness of the laminate',
  taper_ratio: 'the taper length for one of thickness',
  d_mm: 'the size of the hole',
  f: 'the service factor',
  gamma_Jm2: 'the fracture energy',
  G_MPa: 'the shear modulus of the laminate',
  girth_mm: 'the girth by tape',
  tail_mm: 'the tail of the band',
  build_mm: 'the build under the band',
  band_thickness_mm: 'the thickness of the band',
  hole_axial_mm: 'the hole along the pipe',
  hole_hoop_mm: 'the hole round the pipe',
  times_hole: 'the specification’s amount of putty against the hole',
  design_mm: 'the thickness by design',
  ply_mm: 'the thickness of one ply',
  at_least: 'the least number of plies',
  plies: 'the number of plies',
  band_mm: 'the width of the tape',
  pitch_mm: 'the advance of one turn',
  axial_mm: 'the total length',
  passes: 'the number of passes',
  end_turns: 'the turns at the ends of a pass',
  length_mm: 'the length',
  roll_length_mm: 'the length of a roll',
  wastage: 'the waste',
  spare: 'the spare',
  filler_length_mm: 'the filler’s length along the pipe',
  filler_girth_mm: 'the filler’s length round the pipe',
  filler_mm: 'the filler’s thickness',
  density: 'the density of the mixed filler',
  per_ply: 'the mixed resin to one ply',
  part_b: 'the specification’s ratio of the two parts',
}

const SENTENCES: Readonly<Record<string, string>> = {
  strain_not_a_fraction: 'the strain is above 0.02: enter it as a fraction',
  no_strain_left: 'the difference of expansion takes the whole strain: nothing is left',
  pressure_unreachable: 'no thickness is enough for this hole at this pressure: another kind of repair',
  live_above_design: 'the pressure during application is above the design pressure',
  gap_between_turns: 'the turns do not touch: the advance is greater than the width of the tape',
  band_wider_than_repair: 'the tape is wider than the repair is long',
}

const SHAPES: readonly (readonly [RegExp, (name: string) => string])[] = [
  [/^missing_(.+)$/, (name) => `${name} is missing`],
  [/^not_positive_(.+)$/, (name) => `${name} is not above zero`],
  [/^negative_(.+)$/, (name) => `${name} is below zero`],
  [/^not_finite_(.+)$/, (name) => `${name} is not a number`],
  [/^(.+)_above_one$/, (name) => `${name} is above one`],
  [/^(.+)_not_below_one$/, (name) => `${name} is not below one`],
  [/^(.+)_not_whole$/, (name) => `${name} is not a whole number`],
]

/** Why a formula gave no figure, in words: `missing_Ec_MPa` is "the modulus of the laminate round the pipe is missing". A code without words is shown as it is. */
export function refusalWords(code: string): string {
  const sentence = SENTENCES[code]
  if (sentence) return sentence
  for (const [shape, words] of SHAPES) {
    const name = shape.exec(code)?.[1]
    if (name !== undefined) return words(NAMES[name] ?? name)
  }
  return code
}
