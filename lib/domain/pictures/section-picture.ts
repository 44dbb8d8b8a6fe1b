import type { RepairState } from '../fold/repair-state'
import { layerStateOf } from './layer-state'
import type { LayerState, Picture, Shape } from './picture'
import { heightAt } from './profile-line'
import { calloutsOf, dimensionsOf, LAYER_POINTS, wallReadings } from './section-labels'
import { fillerShapes, plugShapes, steelShapes, wrapBase, wrapShapes } from './section-layers'
import { type SectionNumbers, sectionNumbers } from './section-numbers'
import { type SectionProfile, sectionProfile } from './section-profile'

const WIDTH_PX = 720
const HEIGHT_PX = 344
const SIDE_PX = 30
const TOP_PX = 92
const BOTTOM_PX = 84

/**
 * Cut along the pipe wall through the leak, drawn from the repair's own numbers: steel with the wall as found on the leak's clock row, plug, filler and plies.
 * A layer is hatched while its points are open, solid once released, pale with a dashed edge where a release fell or is in question. Heights are drawn larger than
 * lengths; the title says how many times. Works from a design alone and from an empty record.
 */
export function sectionPicture(state: RepairState): Picture {
  const numbers = sectionNumbers(state)
  const profile = sectionProfile(numbers)
  const isEmpty = numbers.wallMm === null && numbers.wrap === null
  const top = Math.max(
    isEmpty ? 7 : 1,
    ...profile.outer.map(([x]) => topAt(profile, x)),
    ...(profile.wrap?.thickness ?? []).map(([x]) => topAt(profile, x)),
    topAt(profile, 0),
  )
  const bottom = Math.min(...profile.inner.map(([, y]) => y))
  const alongPx = (WIDTH_PX - 2 * SIDE_PX) / (2 * profile.halfMm)
  const upPx = Math.min((HEIGHT_PX - TOP_PX - BOTTOM_PX) / (top - bottom), alongPx * 8)
  const scale = { x: (mm: number) => WIDTH_PX / 2 + mm * alongPx, y: (mm: number) => TOP_PX + (top - mm) * upPx }
  const at = (points: readonly string[], from: Parameters<typeof layerStateOf>[2]): LayerState =>
    layerStateOf(state, points, from)
  const steelFoot = scale.y(bottom)
  const shapes: Shape[] = [
    ...wrapShapes(
      numbers,
      profile,
      scale,
      numbers.wrap?.attempt ? at(LAYER_POINTS.wrap, numbers.wrap.attempt) : 'open',
    ),
    ...fillerShapes(profile, scale, at(LAYER_POINTS.filler, numbers.filler?.attempt ?? null)),
    ...plugShapes(numbers, profile, scale, at(LAYER_POINTS.plug, numbers.arrest?.attempt ?? null)),
    ...steelShapes(numbers, profile, scale, at(LAYER_POINTS.steel, null), at(LAYER_POINTS.surface, null)),
    ...dimensionsOf(numbers, profile, scale, TOP_PX - 14),
    ...wallReadings(numbers, scale, steelFoot + 22),
    ...(isEmpty
      ? [
          {
            kind: 'text',
            x: WIDTH_PX / 2,
            y: TOP_PX + 30,
            text: 'Nothing measured or designed yet',
            style: 'note',
            anchor: 'middle',
          } as const,
        ]
      : []),
    ...calloutsOf(state, numbers, profile, scale, { widthPx: WIDTH_PX, heightPx: HEIGHT_PX }),
  ]
  return {
    widthPx: WIDTH_PX,
    heightPx: HEIGHT_PX,
    title: `Section through the leak, mm; heights drawn ${(upPx / alongPx).toFixed(1)} times`,
    description: describeSection(numbers, at),
    shapes,
  }
}

function topAt(profile: SectionProfile, xMm: number): number {
  const base = heightAt(wrapBase(profile), xMm)
  return profile.wrap && xMm >= profile.wrap.fromMm && xMm <= profile.wrap.toMm
    ? base + heightAt(profile.wrap.thickness, xMm)
    : base
}

function describeSection(numbers: SectionNumbers, at: (points: readonly string[], from: null) => LayerState): string {
  const drawn = { open: 'open, hatched', released: 'released, solid', broken: 'fallen or in question, dashed' }
  return [
    numbers.wall.length > 0
      ? `Wall at the leak’s clock row: ${numbers.wall.map((one) => one.text).join(', ')} mm`
      : 'No wall readings',
    numbers.arrest
      ? `${numbers.arrest.record.arrest.method}: ${drawn[at(LAYER_POINTS.plug, null)]}`
      : 'no leak arrest recorded',
    numbers.filler ? `filler: ${drawn[at(LAYER_POINTS.filler, null)]}` : 'no filler recorded',
    numbers.wrap
      ? `wrap of ${numbers.wrap.plies ?? 'unknown'} plies: ${numbers.wrap.attempt ? drawn[at(LAYER_POINTS.wrap, null)] : 'as designed, hatched'}`
      : 'no wrap designed',
  ].join('; ')
}
