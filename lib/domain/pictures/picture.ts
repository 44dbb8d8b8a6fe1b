/** A place in a picture, in the picture's own pixels, y downwards. */
export type Place = readonly [xPx: number, yPx: number]

/** How a layer of the repair is drawn: hatched while its points are open, solid once released, broken where a release fell or is doubted. */
export type LayerState = 'open' | 'released' | 'broken'

export type StyleName =
  | 'steel'
  | 'plug'
  | 'plate'
  | 'filler'
  | 'wrap'
  | 'surface'
  | 'ply'
  | 'ply-outer'
  | 'hatch'
  | 'dimension'
  | 'leader'
  | 'dot'
  | 'axis'
  | 'ground'
  | 'frame'
  | 'mark-pass'
  | 'mark-fail'
  | 'mark-not-proven'
  | 'mark-plain'
  | 'callout'
  | 'note'
  | 'figure'
  | 'value'
  | 'value-fail'
  | 'value-not-proven'
  | 'series'
  | 'series-coldest'
  | 'series-second'
  | 'series-ambient'
  | 'limit-line'
  | 'moment-line'
  | 'break-area'
  | 'label'
  | 'zone'
  | 'step'

/**
 * One thing to draw. Painted in the order of the list. `mark` names the place on the pipe that a shape stands for.
 * `cells` is a raster of equal cells, row by row from the top left; a share runs from 0 (lowest) to 1 (highest), null is left blank.
 */
export type Shape =
  | { kind: 'polygon'; points: readonly Place[]; style: StyleName; state?: LayerState; mark?: string }
  | { kind: 'polyline'; points: readonly Place[]; style: StyleName; state?: LayerState }
  | { kind: 'segments'; segments: readonly (readonly [Place, Place])[]; style: StyleName }
  | { kind: 'circle'; x: number; y: number; radiusPx: number; style: StyleName; mark?: string }
  | {
      kind: 'text'
      x: number
      y: number
      text: string
      style: StyleName
      anchor: 'start' | 'middle' | 'end'
      mark?: string
    }
  | {
      kind: 'cells'
      x: number
      y: number
      columns: number
      cellWidthPx: number
      cellHeightPx: number
      shares: readonly (number | null)[]
    }

/** How wide a picture is drawn: for a desk or a sheet of paper, or for a phone held upright. */
export type PictureFormat = 'wide' | 'narrow'

/** A drawing as data, shared by screen and dossier. `description` tells it to a reader who cannot see it. */
export type Picture = {
  widthPx: number
  heightPx: number
  title: string
  description: string
  shapes: readonly Shape[]
}
