import * as z from 'zod'

/** An exact decimal number: value = digits / 10^scale. No float reaches a verdict. */
export const Decimal = z.strictObject({ digits: z.int().min(-1e12).max(1e12), scale: z.int().min(0).max(6) })
export type Decimal = z.infer<typeof Decimal>

/** An exact fraction: numerator / denominator, the denominator positive. Means are kept so. */
export type Fraction = { numerator: bigint; denominator: bigint }

const TEXT = /^([+\-−]?)(\d{1,9})(?:\.(\d{1,6}))?$/

/**
 * Parse keyed text to an exact decimal. One decimal point; no thousands mark, no comma.
 * @returns null when the text is not such a number (`1,234` is refused rather than guessed)
 */
export function parseDecimal(text: string): Decimal | null {
  const match = TEXT.exec(text.trim())
  if (!match) return null
  const [, sign, whole = '', part = ''] = match
  const digits = Number(whole + part)
  if (digits > 1e12) return null
  return { digits: sign === '-' || sign === '−' ? 0 - digits : digits, scale: part.length }
}

/** The exact decimal of literal text in data or tests. @throws RangeError when the text is no decimal */
export function decimal(text: string): Decimal {
  const value = parseDecimal(text)
  if (!value) throw new RangeError(`not a decimal: ${text}`)
  return value
}

/** Show a decimal with exactly its own digits: 12.0 stays "12.0". */
export function showDecimal({ digits, scale }: Decimal): string {
  const sign = digits < 0 ? '-' : ''
  const text = String(Math.abs(digits)).padStart(scale + 1, '0')
  return scale === 0 ? sign + text : `${sign}${text.slice(0, -scale)}.${text.slice(-scale)}`
}

/** The same with its sign, as a place along a line is said: `+860`, `−415`. */
export function showSigned(value: Decimal): string {
  const text = showDecimal(value)
  return text.startsWith('-') ? `−${text.slice(1)}` : `+${text}`
}

/** The decimal as an exact fraction. */
export function fractionOf({ digits, scale }: Decimal): Fraction {
  return { numerator: BigInt(digits), denominator: 10n ** BigInt(scale) }
}

/** Compare two fractions exactly: negative, zero or positive as a is below, at or above b. */
export function compareFractions(a: Fraction, b: Fraction): number {
  const left = a.numerator * b.denominator
  const right = b.numerator * a.denominator
  return left < right ? -1 : left > right ? 1 : 0
}

/** Compare two decimals exactly. */
export function compareDecimals(a: Decimal, b: Decimal): number {
  return compareFractions(fractionOf(a), fractionOf(b))
}

/** Exact mean of decimals; null of an empty list, never zero. */
export function meanOf(values: readonly Decimal[]): Fraction | null {
  if (values.length === 0) return null
  const scale = Math.max(...values.map((value) => value.scale))
  const sum = values.reduce((total, value) => total + BigInt(value.digits) * 10n ** BigInt(scale - value.scale), 0n)
  return { numerator: sum, denominator: BigInt(values.length) * 10n ** BigInt(scale) }
}

/** Product of two decimals as an exact fraction. */
export function timesFraction(a: Fraction, b: Fraction): Fraction {
  return { numerator: a.numerator * b.numerator, denominator: a.denominator * b.denominator }
}

/** Exact sum of two fractions. */
export function plusFraction(a: Fraction, b: Fraction): Fraction {
  return {
    numerator: a.numerator * b.denominator + b.numerator * a.denominator,
    denominator: a.denominator * b.denominator,
  }
}

/** Show a fraction with a number of decimal places, half rounded away from zero (86.25 shows 86.3). For display only. */
export function showFraction({ numerator, denominator }: Fraction, places: number): string {
  const negative = numerator < 0n
  const scaled = (negative ? -numerator : numerator) * 10n ** BigInt(places)
  const rounded = (scaled * 2n + denominator) / (denominator * 2n)
  const text = showDecimal({ digits: Number(rounded), scale: places })
  return negative && rounded !== 0n ? `-${text}` : text
}

/** The nearest float: for engineering formulas and drawing, never for a comparison with a limit. */
export function toNumber(value: Decimal | Fraction): number {
  if ('digits' in value) return value.digits / 10 ** value.scale
  return Number(value.numerator) / Number(value.denominator)
}
