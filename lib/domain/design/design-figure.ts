import type { PropertyKey } from './property-rows'
import type { FigureSource } from './recorded-basis'

export type FoundKey =
  | 'diameter'
  | 'wall'
  | 'wallLeft'
  | 'hole'
  | 'holeAxial'
  | 'holeHoop'
  | 'defect'
  | 'girth'
  | 'pressure'
  | 'timesHole'
  | 'chosenPlies'
  | 'chosenThickness'
  | 'chosenOverlap'
  | 'chosenLength'
  | 'fillerRatio'
  | 'resinRatio'
export type FigureKey = FoundKey | PropertyKey

/** One figure that goes into an equation: its number in the equation's unit, the text as recorded, and where it comes from. Null is not known, never zero. */
export type DesignFigure = {
  symbol: string
  label: string
  unit: string
  value: number | null
  shown: string | null
  note: string | null
  from: FigureSource | null
}
