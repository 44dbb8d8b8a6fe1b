import { compareFractions, type Fraction, showFraction } from '../decimal'

const MOST_PLACES = 9

/** A fraction with at least so many places, and as many more as it needs to be exact (up to nine): 1.485 of 1.35 × 1.1. */
export function showExact(value: Fraction, leastPlaces = 0): string {
  for (let places = leastPlaces; places < MOST_PLACES; places += 1) {
    if ((value.numerator * 10n ** BigInt(places)) % value.denominator === 0n) return showFraction(value, places)
  }
  return showFraction(value, leastPlaces + 2)
}

/**
 * A value with so many places, or more where rounding would show it on the other side of a limit (or at it): 76.996 against 77 does not
 * show 77.00. For display only; the comparison was made on the exact value.
 */
export function showBeside(value: Fraction, places: number, limits: readonly Fraction[]): string {
  for (let more = places; more < MOST_PLACES; more += 1) {
    const shown = roundedTo(value, more)
    if (
      limits.every((limit) => Math.sign(compareFractions(shown, limit)) === Math.sign(compareFractions(value, limit)))
    )
      return showFraction(value, more)
  }
  return showFraction(value, MOST_PLACES)
}

function roundedTo({ numerator, denominator }: Fraction, places: number): Fraction {
  const power = 10n ** BigInt(places)
  const size = numerator < 0n ? -numerator : numerator
  const rounded = (size * power * 2n + denominator) / (denominator * 2n)
  return { numerator: numerator < 0n ? -rounded : rounded, denominator: power }
}
