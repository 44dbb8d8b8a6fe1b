import { fractionOf, showFraction } from './decimal'
import { convertExact } from './judge/exact-units'
import { type Reading, showUnit, type Unit } from './reading'

/** The metric unit that stands beside a unit as read. Hardness scales have none: they are never converted. */
const METRIC: Partial<Record<Unit, Unit>> = { mil: 'um', in: 'mm', psi: 'MPa', bar: 'MPa', degF: 'degC' }

const MOST_PLACES = 6

/**
 * A reading in the metric unit beside its unit as read: `86.36 µm` for 3.4 mil. `=` where the figure is exact, `≈` where it does not end within six
 * places. The reading itself is never changed.
 * @returns null for a reading that is metric already, or is no number
 */
export function metricBeside(reading: Reading): string | null {
  if (!('unit' in reading)) return null
  const metric = METRIC[reading.unit]
  const value = metric ? convertExact(fractionOf(reading), reading.unit, metric) : null
  if (!metric || !value) return null
  for (let places = 0; places <= MOST_PLACES; places += 1) {
    if ((value.numerator * 10n ** BigInt(places)) % value.denominator === 0n)
      return `= ${showFraction(value, places)} ${showUnit(metric)}`
  }
  return `≈ ${showFraction(value, Math.min(MOST_PLACES, reading.scale + (reading.unit === 'psi' ? 4 : 2)))} ${showUnit(metric)}`
}

/** The text of a reading with its metric figure in brackets, where it was read in another unit. */
export function withMetric(shown: string, reading: Reading): string {
  const metric = metricBeside(reading)
  return metric ? `${shown} (${metric})` : shown
}
