import { measured, type Unit } from '@/lib/domain/reading'
import type { BodyInput } from './fact-script'
import type { RepairFigures } from './repair-figures'

type DesignBody = Extract<BodyInput<'recorded'>['record'], { type: 'design' }>
type Parts = Pick<DesignBody, 'properties' | 'quantities'>

const of =
  (unit: Unit) =>
  (text: string): ReturnType<typeof measured> =>
    measured(text, unit)
const [mm, mpa, ratio, strain, percent] = [of('mm'), of('MPa'), of('ratio'), of('mm/mm'), of('%')]

/** Material values of both demo systems, invented; the strains follow from the table's strain, its temperature factor and the expansions. */
const LAMINATE: DesignBody['properties'] = {
  edition: 'ISO 24817, the edition that the specification cites',
  pipeCase: 'no help from the pipe',
  overlapForm: 'ISO 24817',
  hoopModulus: mpa('24000'),
  axialModulus: mpa('18000'),
  shearModulus: mpa('3400'),
  poissonRatio: ratio('0.18'),
  hoopStrain: strain('0.0018'),
  axialStrain: strain('0.0018'),
  baseStrain: strain('0.0024'),
  temperatureFactor: ratio('0.80'),
  temperatureRise: measured('20', 'K'),
  pipeExpansion: measured('12', 'um/mK'),
  laminateExpansion: measured('18', 'um/mK'),
  fractureEnergy: measured('150', 'J/m2'),
  serviceFactor: ratio('0.333'),
  fewestPlies: measured('2', 'plies'),
  taperRatio: ratio('5'),
  lapShearStrength: mpa('7.0'),
  bondFactor: ratio('3'),
}

const PATCH: Record<string, [length: string, girth: string]> = {
  'MD-0041': ['120', '290'],
  'MD-0042': ['140', '240'],
  'MD-0043': ['110', '340'],
  'MD-0044': ['100', '180'],
}

/** The design sheet's values for equations and quantities. Invented; they give no computed figure above the given one. */
export function designParts({ number, wrap }: RepairFigures): Parts {
  const [fillerLength, fillerGirth] = PATCH[number] ?? ['', '']
  const filler = {
    fillerLength: mm(fillerLength),
    fillerGirth: mm(fillerGirth),
    fillerThickness: mm('7.0'),
    fillerDensity: measured('2.40', 'g/cm3'),
    fillerSpare: percent('30'),
  }
  return wrap === 'wet lay-up'
    ? {
        properties: {
          ...LAMINATE,
          plyThickness: mm('0.62'),
          chosenBecause:
            'A thicker laminate than computed for handling on a live line and for impact in the gallery; a whole number of plies.',
        },
        quantities: {
          ...filler,
          resinPerPly: measured('610', 'g/m2'),
          resinSpare: percent('10'),
          fabricWaste: percent('8'),
        },
      }
    : {
        properties: {
          ...LAMINATE,
          plyThickness: mm('0.42'),
          chosenBecause:
            'Four passes of the tape, for a wrap that stands knocks in the drain; a whole number of passes.',
        },
        quantities: {
          ...filler,
          bandTail: mm('60'),
          bandThickness: mm('0.7'),
          bandBuild: mm('0.5'),
          tapeWidth: mm('75'),
          tapePitch: mm('32'),
          rollLength: measured('7.5', 'm'),
          endTurns: ratio('2'),
          tapeWaste: percent('10'),
        },
      }
}
