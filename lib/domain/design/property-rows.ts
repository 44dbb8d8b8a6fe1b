import type { Unit } from '../reading'
import type { RecordOf } from '../records/record'

type Design = RecordOf<'design'>
type PropertyField =
  | Exclude<keyof NonNullable<Design['properties']>, 'edition' | 'pipeCase' | 'overlapForm' | 'chosenBecause'>
  | keyof NonNullable<Design['quantities']>

/** Figures that the design record states, one row each: name, field, symbol, words, unit of the equation. */
// biome-ignore format: one row a line
const ROWS = [
  ['hoopModulus', 'hoopModulus', 'Ec', 'modulus of the laminate round the pipe', 'MPa'],
  ['axialModulus', 'axialModulus', 'Ea', 'modulus of the laminate along the pipe', 'MPa'],
  ['shearModulus', 'shearModulus', 'G', 'shear modulus of the laminate', 'MPa'],
  ['poisson', 'poissonRatio', 'ν', 'Poisson’s ratio of the laminate', 'ratio'],
  ['hoopStrain', 'hoopStrain', 'εc', 'allowed strain round the pipe', 'mm/mm'],
  ['axialStrain', 'axialStrain', 'εa', 'allowed strain along the pipe', 'mm/mm'],
  ['baseStrain', 'baseStrain', 'ε0', 'strain of the standard’s table', 'mm/mm'],
  ['temperatureFactor', 'temperatureFactor', 'fT', 'temperature factor of the strain', 'ratio'],
  ['temperatureRise', 'temperatureRise', 'ΔT', 'design above application temperature', 'K'],
  ['pipeExpansion', 'pipeExpansion', 'αp', 'expansion of the pipe', 'um/mK'],
  ['laminateExpansion', 'laminateExpansion', 'αl', 'expansion of the laminate', 'um/mK'],
  ['toughness', 'fractureEnergy', 'γ', 'fracture energy of the bond', 'J/m2'],
  ['serviceFactor', 'serviceFactor', 'f', 'service factor', 'ratio'],
  ['force', 'axialForce', 'F', 'axial force', 'N'],
  ['pipeModulus', 'pipeModulus', 'Es', 'modulus of the pipe', 'MPa'],
  ['pipeStress', 'pipeStress', 's', 'allowed stress of the pipe', 'MPa'],
  ['pipePressure', 'pipePressure', 'Ps', 'pressure that the thinned pipe may carry', 'MPa'],
  ['live', 'livePressure', 'Plive', 'pressure in the pipe during application', 'MPa'],
  ['ply', 'plyThickness', 'tply', 'thickness of one cured ply', 'mm'],
  ['fewestPlies', 'fewestPlies', 'nmin', 'plies, at the fewest', 'plies'],
  ['taperRatio', 'taperRatio', 'r', 'taper length for one of thickness', 'ratio'],
  ['lapShear', 'lapShearStrength', 'τ', 'lap shear strength of the bond', 'MPa'],
  ['bondFactor', 'bondFactor', 'k', 'factor of the bond length', 'ratio'],
  ['tail', 'bandTail', 'tail', 'tail of the band', 'mm'],
  ['bandThickness', 'bandThickness', 'tb', 'thickness of the band', 'mm'],
  ['build', 'bandBuild', 'build', 'build under the band', 'mm'],
  ['fillerLength', 'fillerLength', 'lf', 'filler, length along the pipe', 'mm'],
  ['fillerGirth', 'fillerGirth', 'gf', 'filler, length round the pipe', 'mm'],
  ['fillerThickness', 'fillerThickness', 'tf', 'filler, thickness to reckon with', 'mm'],
  ['fillerDensity', 'fillerDensity', 'ρf', 'filler, density when mixed', 'g/cm3'],
  ['fillerSpare', 'fillerSpare', 'wf', 'filler, spare', '%'],
  ['resinPerPly', 'resinPerPly', 'mr', 'mixed resin to one ply', 'g/m2'],
  ['resinSpare', 'resinSpare', 'wr', 'resin, spare', '%'],
  ['fabricWaste', 'fabricWaste', 'wc', 'fabric, waste', '%'],
  ['tapeWidth', 'tapeWidth', 'b', 'tape, width', 'mm'],
  ['tapePitch', 'tapePitch', 'p', 'tape, advance of one turn', 'mm'],
  ['rollLength', 'rollLength', 'lr', 'tape, length of a roll', 'mm'],
  ['endTurns', 'endTurns', 'e', 'tape, turns in place at the ends of a pass', 'ratio'],
  ['tapeWaste', 'tapeWaste', 'wt', 'tape, waste', '%'],
] as const satisfies readonly (readonly [string, PropertyField, string, string, Unit])[]

export type PropertyKey = (typeof ROWS)[number][0]

export const PROPERTY_ROWS: readonly (readonly [PropertyKey, PropertyField, string, string, Unit])[] = ROWS
