import type { Unit } from '@/lib/domain/reading'
import { OVERLAP_FORMS, PIPE_CASES } from '@/lib/domain/records/defect'
import type { FieldSpec } from './field-spec'

const PRESSURES = ['MPa', 'bar', 'psi'] as const
const LENGTHS = ['mm', 'in'] as const

function may(name: string, label: string, ...units: readonly [Unit, ...Unit[]]): FieldSpec {
  return { kind: 'measured', name, label, units, optional: true }
}

/** What the design equations need beyond the defect. Nothing is filled in beforehand; an equation without its value says what is missing. */
export const DESIGN_PROPERTIES_FIELDS: FieldSpec = {
  kind: 'group',
  name: 'properties',
  label: 'Values of the design equations',
  optional: true,
  of: [
    { kind: 'text', name: 'edition', label: 'Standard and edition that the specification cites', optional: true },
    { kind: 'choice', name: 'pipeCase', label: 'How the pipe is counted', options: PIPE_CASES, optional: true },
    { kind: 'choice', name: 'overlapForm', label: 'Overlap by the form of', options: OVERLAP_FORMS, optional: true },
    may('hoopModulus', 'Modulus of the laminate round the pipe, Ec', 'MPa'),
    may('axialModulus', 'Modulus of the laminate along the pipe, Ea', 'MPa'),
    may('shearModulus', 'Shear modulus of the laminate, G', 'MPa'),
    may('poissonRatio', 'Poisson’s ratio of the laminate', 'ratio'),
    may('hoopStrain', 'Allowed strain round the pipe, as a fraction', 'mm/mm'),
    may('axialStrain', 'Allowed strain along the pipe, as a fraction', 'mm/mm'),
    may('baseStrain', 'Strain of the standard’s table, as a fraction', 'mm/mm'),
    may('temperatureFactor', 'Temperature factor of the strain', 'ratio'),
    may('temperatureRise', 'Design temperature above the temperature of application', 'K'),
    may('pipeExpansion', 'Expansion of the pipe, millionths per kelvin', 'um/mK'),
    may('laminateExpansion', 'Expansion of the laminate, millionths per kelvin', 'um/mK'),
    may('fractureEnergy', 'Fracture energy of the bond, gamma', 'J/m2'),
    may('serviceFactor', 'Service factor', 'ratio'),
    may('axialForce', 'Axial force, when it is not that of a closed end', 'N'),
    may('pipeModulus', 'Modulus of the pipe, Es', 'MPa'),
    may('pipeStress', 'Allowed stress of the pipe, s', 'MPa'),
    may('pipePressure', 'Pressure that the thinned pipe may carry, Ps', ...PRESSURES),
    may('livePressure', 'Pressure in the pipe during application', ...PRESSURES),
    may('plyThickness', 'Thickness of one cured ply', ...LENGTHS),
    may('fewestPlies', 'Plies, at the fewest', 'plies'),
    may('taperRatio', 'Taper length for one of thickness', 'ratio'),
    may('lapShearStrength', 'Lap shear strength of the bond', 'MPa'),
    may('bondFactor', 'Factor of the bond length', 'ratio'),
    { kind: 'remark', name: 'chosenBecause', label: 'Why more than the computed is chosen', optional: true },
  ],
}

/** What the quantity sheet needs from the engineer. */
export const DESIGN_QUANTITIES_FIELDS: FieldSpec = {
  kind: 'group',
  name: 'quantities',
  label: 'Values of the quantity sheet',
  optional: true,
  of: [
    may('bandTail', 'Tail of the band', ...LENGTHS),
    may('bandThickness', 'Thickness of the band', ...LENGTHS),
    may('bandBuild', 'Build under the band', ...LENGTHS),
    may('fillerLength', 'Filler, length along the pipe', ...LENGTHS),
    may('fillerGirth', 'Filler, length round the pipe', ...LENGTHS),
    may('fillerThickness', 'Filler, thickness to reckon with', ...LENGTHS),
    may('fillerDensity', 'Filler, density when mixed', 'g/cm3'),
    may('fillerSpare', 'Filler, spare', '%'),
    may('resinPerPly', 'Mixed resin to one ply', 'g/m2'),
    may('resinSpare', 'Resin, spare', '%'),
    may('fabricWaste', 'Fabric, waste', '%'),
    may('tapeWidth', 'Tape, width', ...LENGTHS),
    may('tapePitch', 'Tape, advance of one turn', ...LENGTHS),
    may('rollLength', 'Tape, length of a roll', 'm'),
    may('endTurns', 'Tape, turns in place at the ends of a pass', 'ratio'),
    may('tapeWaste', 'Tape, waste', '%'),
  ],
}
