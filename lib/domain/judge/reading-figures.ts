import { compareDecimals, meanOf, showFraction } from '../decimal'
import { showReading } from '../reading'
import type { MarkedReading } from '../records/common'
import { meanPlaces } from './quantity-names'

/**
 * Number, lowest, highest and exact mean of the readings that are numbers, in words; recorded, whether or not a criterion asks for them.
 * @returns null for fewer than two numbers: nothing is told of one reading that it does not tell itself
 */
export function readingFigures(quantity: string, readings: readonly MarkedReading[]): string | null {
  const numbers = readings.flatMap(({ reading }) => (reading.kind === 'number' ? [reading] : []))
  const mean = meanOf(numbers)
  const sorted = [...numbers].sort(compareDecimals)
  const [first, last] = [sorted[0], sorted.at(-1)]
  if (!mean || !first || !last || numbers.length < 2) return null
  const shown = showFraction(mean, meanPlaces(quantity, Math.max(...numbers.map((one) => one.scale))))
  return `${numbers.length} readings, lowest ${showReading(first)}, highest ${showReading(last)}, mean ${shown}`
}
