import { isRefused } from '@/lib/calc/refusal'
import type { DesignFigures } from './design-figures'
import { type Equation, equationOf, showComputed } from './equation'
import { fillerMass, partsOfMix } from './material-formulas'
import { type Need, needOf } from './need'
import { partsEquation } from './parts-equation'
import { valuesOf } from './required-laminate'

function massOf(figures: DesignFigures) {
  const values = valuesOf(figures)
  return fillerMass({
    lengthMm: values.fillerLength,
    girthMm: values.fillerGirth,
    thicknessMm: values.fillerThickness,
    densityGcm3: values.fillerDensity,
    sparePercent: values.fillerSpare,
  })
}

/** The two parts of the filler to weigh out, with spare. */
export function fillerNeed(figures: DesignFigures): { partA: Need; partB: Need } {
  const parts = partsOf(figures)
  return {
    partA: needOf(parts, (one) => one.partAG, 'g', 0),
    partB: needOf(parts, (one) => one.partBG, 'g', 0),
  }
}

function partsOf(figures: DesignFigures) {
  const mass = massOf(figures)
  return isRefused(mass) ? mass : partsOfMix({ massG: mass.massG, partBPer100: figures.fillerRatio.value })
}

/** Mass of the mixed filler and its two parts. */
export function fillerEquations(figures: DesignFigures): Equation[] {
  const mass = massOf(figures)
  const parts = partsOf(figures)
  return [
    equationOf(
      {
        id: 'filler',
        title: 'Filler, mixed, with spare',
        form: 'mf = {fillerLength}·{fillerGirth}·{fillerThickness}·{fillerDensity}/1000·(1 + {fillerSpare}/100)',
        source: 'Geometry; density and spare as stated',
        confidence: 'high',
        notes: ['The patch is reckoned at one thickness; hollows of the wall come on top.'],
      },
      figures,
      isRefused(mass)
        ? mass
        : {
            results: [
              { symbol: 'without spare', text: `${showComputed(mass.netG, 0)} g` },
              { symbol: 'mf', text: `${showComputed(mass.massG, 0)} g` },
            ],
          },
    ),
    partsEquation(
      {
        id: 'filler-parts',
        title: 'Filler, its two parts',
        symbol: 'mf',
        massG: isRefused(mass) ? null : mass.massG,
        ratio: 'fillerRatio',
      },
      figures,
      parts,
    ),
  ]
}
