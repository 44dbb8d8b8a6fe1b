import { compareFractions, type Decimal, type Fraction, fractionOf, plusFraction, showFraction } from '../decimal'
import type { Unit } from '../reading'

export type Amount = Decimal & { unit: string }

/** Factors between units of one kind that are exact by definition; other units are never converted. */
const EXACT: Partial<Record<Unit, { kind: string; factor: Fraction }>> = {
  g: { kind: 'mass', factor: { numerator: 1n, denominator: 1000n } },
  kg: { kind: 'mass', factor: { numerator: 1n, denominator: 1n } },
  mm: { kind: 'length', factor: { numerator: 1n, denominator: 1000n } },
  m: { kind: 'length', factor: { numerator: 1n, denominator: 1n } },
}

/** An amount in another unit of its kind, exactly; null when the units are not of one kind. */
export function amountIn(amount: Amount, unit: string): Fraction | null {
  if (amount.unit === unit) return fractionOf(amount)
  const from = EXACT[amount.unit as Unit]
  const to = EXACT[unit as Unit]
  if (!from || !to || from.kind !== to.kind) return null
  const value = fractionOf(amount)
  return {
    numerator: value.numerator * from.factor.numerator * to.factor.denominator,
    denominator: value.denominator * from.factor.denominator * to.factor.numerator,
  }
}

/** The exact sum of fractions. */
export function sumOf(values: readonly Fraction[]): Fraction {
  return values.reduce(plusFraction, { numerator: 0n, denominator: 1n })
}

/** One fraction less another. */
export function minus(a: Fraction, b: Fraction): Fraction {
  return plusFraction(a, { numerator: -b.numerator, denominator: b.denominator })
}

/** Whether a fraction is exactly zero. */
export function isZero(value: Fraction): boolean {
  return compareFractions(value, { numerator: 0n, denominator: 1n }) === 0
}

/** Show an exact amount with as many places as it needs, three for a mass. */
export function showAmount(value: Fraction, unit: string): string {
  return showFraction(value, unit === 'kg' ? 3 : placesOf(value))
}

function placesOf(value: Fraction): number {
  for (let places = 0; places < 6; places += 1)
    if ((value.numerator * 10n ** BigInt(places)) % value.denominator === 0n) return places
  return 6
}
