import { isRefused } from '@/lib/calc/refusal'
import { wrapLength, wrapMinPlies, wrapRolls } from '@/lib/calc/wrap-length'
import type { DesignFigures } from './design-figures'
import { type Equation, equationOf, showComputed } from './equation'
import { type Need, needOf } from './need'
import { type DesignValues, valuesOf } from './required-laminate'

/** Rolls of tape, and their length with waste. */
export function tapeNeed(figures: DesignFigures): { rolls: Need; run: Need } {
  const rolls = tapeRolls(valuesOf(figures))
  return {
    rolls: needOf(rolls, (one) => one.rolls, 'rolls', 0),
    run: needOf(rolls, (one) => one.needMm / 1000, 'm', 1),
  }
}

/** Passes for the plies as chosen, from the thinnest place of a pass. */
function passesOf(values: DesignValues) {
  const { chosenPlies: plies, ply } = values
  return wrapMinPlies({
    designMm: plies === null || ply === null ? null : plies * ply,
    plyMm: ply,
    atLeast: plies,
    bandMm: values.tapeWidth,
    pitchMm: values.tapePitch,
  })
}

function tapeRun(values: DesignValues) {
  const passes = passesOf(values)
  if (isRefused(passes)) return passes
  return wrapLength({
    diameterMm: values.diameter,
    axialMm: values.chosenLength,
    bandMm: values.tapeWidth,
    pitchMm: values.tapePitch,
    plyMm: values.ply,
    ...(passes.passes === null ? {} : { passes: passes.passes }),
    endTurns: values.endTurns,
  })
}

function tapeRolls(values: DesignValues) {
  const run = tapeRun(values)
  if (isRefused(run)) return run
  return wrapRolls({
    lengthMm: run.lengthMm,
    rollLengthMm: values.rollLength,
    wastage: values.tapeWaste === null ? null : values.tapeWaste / 100,
  })
}

/** Passes, length and rolls of the tape. */
export function tapeEquations(figures: DesignFigures): Equation[] {
  const values = valuesOf(figures)
  const [passes, run, rolls] = [passesOf(values), tapeRun(values), tapeRolls(values)]
  const count = { symbol: 'N', text: isRefused(passes) ? '?' : String(passes.passes) }
  const length = { symbol: 'lt', text: isRefused(run) ? '?' : showComputed(run.lengthMm, 0) }
  return [
    equationOf(
      {
        id: 'passes',
        title: 'Passes of the tape',
        form: 'N = ⌈{chosenPlies}/⌊{tapeWidth}/{tapePitch}⌋⌉',
        source: 'Geometry, from the thinnest place of a pass',
        confidence: 'high',
      },
      figures,
      isRefused(passes) ? passes : { results: [{ symbol: 'N', text: String(passes.passes) }] },
    ),
    equationOf(
      {
        id: 'tape',
        title: 'Tape, length',
        form: 'lt = Σ, i = 1 to {passes}, of (({chosenLength} − {tapeWidth})/{tapePitch})·√((π·Dm)² + {tapePitch}²) + {endTurns}·π·Dm;\nDm = {diameter} + (2i − 1)·{ply}·{tapeWidth}/{tapePitch}',
        derived: { passes: count },
        source: 'Geometry',
        confidence: 'medium',
        settle: 'How many turns lie in place at the ends of a pass is to be settled by the engineer.',
        notes: isRefused(run)
          ? []
          : [`Pass by pass: ${run.perPassMm.map((one) => showComputed(one, 0)).join(' + ')} mm.`],
      },
      figures,
      isRefused(run) ? run : { results: [{ symbol: 'lt', text: `${showComputed(run.lengthMm / 1000, 2)} m` }] },
    ),
    equationOf(
      {
        id: 'rolls',
        title: 'Tape, rolls with waste',
        form: 'rolls = ⌈{lt}·(1 + {tapeWaste}/100)/{rollLength}⌉',
        derived: { lt: length },
        source: 'Geometry; what is left on a roll is inside the waste',
        confidence: 'high',
      },
      figures,
      isRefused(rolls)
        ? rolls
        : {
            results: [
              { symbol: 'with waste', text: `${showComputed(rolls.needMm / 1000, 2)} m` },
              { symbol: 'rolls', text: String(rolls.rolls) },
            ],
          },
    ),
  ]
}
