import type { Scene } from '../photo-drawing'
import type { Chance } from './pen'

/** A scene with a pipe in it. */
export type Pipe = Extract<Scene, { kind: 'pipe' }>

/** Where the barrel lies in the picture, in px. */
export type Frame = { top: number; height: number; left: number; right: number; middle: number; axis: number }

/** Scattered spots of the given colours inside a box, in px. */
export function spots(
  chance: Chance,
  count: number,
  from: number,
  to: number,
  top: number,
  height: number,
  colours: [string, string, string],
): string[] {
  return Array.from(
    { length: count },
    () =>
      `<ellipse cx="${chance.between(from, to).toFixed(0)}" cy="${chance.between(top, top + height).toFixed(0)}" rx="${chance.between(5, 60).toFixed(0)}" ry="${chance.between(4, 30).toFixed(0)}" fill="${chance.pick(colours)}" opacity="${chance.between(0.3, 0.9).toFixed(2)}"/>`,
  )
}
