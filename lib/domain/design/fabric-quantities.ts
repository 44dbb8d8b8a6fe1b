import { isRefused } from '@/lib/calc/refusal'
import type { DesignFigures } from './design-figures'
import { type Equation, equationOf, showComputed } from './equation'
import { fabricArea, partsOfMix, resinMass } from './material-formulas'
import { type Need, needOf } from './need'
import { partsEquation } from './parts-equation'
import { type DesignValues, valuesOf } from './required-laminate'

/** Run of the fabric, and the two parts of the resin to weigh out, with spare. */
export function fabricNeed(figures: DesignFigures): { run: Need; partA: Need; partB: Need } {
  const values = valuesOf(figures)
  const parts = resinParts(values)
  return {
    run: needOf(fabricOf(values), (one) => one.runM, 'm', 1),
    partA: needOf(parts, (one) => one.partAG, 'g', 0),
    partB: needOf(parts, (one) => one.partBG, 'g', 0),
  }
}

function fabricOf(values: DesignValues) {
  return fabricArea({
    diameterMm: values.diameter,
    lengthMm: values.chosenLength,
    plies: values.chosenPlies,
    plyMm: values.ply,
    wastePercent: values.fabricWaste,
  })
}

function resinOf(values: DesignValues) {
  const fabric = fabricOf(values)
  return isRefused(fabric)
    ? fabric
    : resinMass({ areaM2: fabric.areaM2, perPlyGm2: values.resinPerPly, sparePercent: values.resinSpare })
}

function resinParts(values: DesignValues) {
  const resin = resinOf(values)
  return isRefused(resin) ? resin : partsOfMix({ massG: resin.massG, partBPer100: values.resinRatio })
}

/** Fabric, resin and its two parts. */
export function fabricEquations(figures: DesignFigures): Equation[] {
  const values = valuesOf(figures)
  const [fabric, resin, parts] = [fabricOf(values), resinOf(values), resinParts(values)]
  const area = { symbol: 'S', text: isRefused(fabric) ? '?' : showComputed(fabric.areaM2, 3) }
  return [
    equationOf(
      {
        id: 'fabric',
        title: 'Fabric, all plies at full width',
        form: 'run = π·({chosenPlies}·{diameter} + {chosenPlies}²·{ply})·(1 + {fabricWaste}/100);\nS = π·({chosenPlies}·{diameter} + {chosenPlies}²·{ply})·{chosenLength}',
        source: 'Geometry: ply i lies at D + (2i − 1)·tply',
        confidence: 'high',
        notes: ['The height of the filler under the plies is left out; end joints are inside the waste.'],
      },
      figures,
      isRefused(fabric)
        ? fabric
        : {
            results: [
              { symbol: 'run', text: `${showComputed(fabric.runM, 1)} m` },
              { symbol: 'S', text: `${showComputed(fabric.areaM2, 2)} m²` },
            ],
          },
    ),
    equationOf(
      {
        id: 'resin',
        title: 'Laminating resin, mixed, with spare',
        form: 'm = {S}·{resinPerPly}·(1 + {resinSpare}/100)',
        derived: { S: area },
        source: 'Mass to one ply and spare as stated',
        confidence: 'high',
      },
      figures,
      isRefused(resin)
        ? resin
        : {
            results: [
              { symbol: 'without spare', text: `${showComputed(resin.netG, 0)} g` },
              { symbol: 'm', text: `${showComputed(resin.massG, 0)} g` },
            ],
          },
    ),
    partsEquation(
      {
        id: 'resin-parts',
        title: 'Resin and hardener',
        symbol: 'm',
        massG: isRefused(resin) ? null : resin.massG,
        ratio: 'resinRatio',
      },
      figures,
      parts,
    ),
  ]
}
