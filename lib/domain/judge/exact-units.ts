import { type Decimal, type Fraction, fractionOf, plusFraction, timesFraction } from '../decimal'
import type { Measured, Unit } from '../reading'

type Step = { to: Unit; numerator: bigint; denominator: bigint; plus?: Fraction }

/** Exact steps to the unit that stands for its kind. Hardness scales, K, ratio and pieces stand alone. Psi is lbf/in², both exact by definition. */
const STEPS: Partial<Record<Unit, Step>> = {
  um: { to: 'mm', numerator: 1n, denominator: 1000n },
  mil: { to: 'mm', numerator: 254n, denominator: 10_000n },
  in: { to: 'mm', numerator: 254n, denominator: 10n },
  m: { to: 'mm', numerator: 1000n, denominator: 1n },
  bar: { to: 'MPa', numerator: 1n, denominator: 10n },
  psi: { to: 'MPa', numerator: 44_482_216_152_605n, denominator: 6_451_600_000_000_000n },
  kg: { to: 'g', numerator: 1000n, denominator: 1n },
  ml: { to: 'mm3', numerator: 1000n, denominator: 1n },
  s: { to: 'min', numerator: 1n, denominator: 60n },
  h: { to: 'min', numerator: 60n, denominator: 1n },
  degF: { to: 'degC', numerator: 5n, denominator: 9n, plus: { numerator: -160n, denominator: 9n } },
}
const SAME: Fraction = { numerator: 0n, denominator: 1n }

/** A value in another unit, exactly; null when the two units have no exact factor between them. */
export function convertExact(value: Fraction, from: Unit, to: Unit): Fraction | null {
  if (from === to) return value
  const up = STEPS[from]
  const down = STEPS[to]
  if ((up?.to ?? from) !== (down?.to ?? to)) return null
  const base = up ? plusFraction(timesFraction(value, up), up.plus ?? SAME) : value
  if (!down) return base
  const offset = down.plus ? { numerator: -down.plus.numerator, denominator: down.plus.denominator } : SAME
  return timesFraction(plusFraction(base, offset), { numerator: down.denominator, denominator: down.numerator })
}

/** A measured value in another unit, exactly; null as {@link convertExact}, or when nothing was measured. */
export function measuredExact(value: Measured | undefined, to: Unit): Fraction | null {
  return value ? convertExact(fractionOf(value), value.unit, to) : null
}

/** A difference or an uncertainty in another unit: a factor without an offset. */
export function convertDifference(value: Fraction, from: Unit, to: Unit): Fraction | null {
  const end = convertExact(value, from, to)
  const start = convertExact(SAME, from, to)
  return end && start ? minusFraction(end, start) : null
}

/** a - b, exactly. */
export function minusFraction(a: Fraction, b: Fraction): Fraction {
  return plusFraction(a, { numerator: -b.numerator, denominator: b.denominator })
}

/** The exact difference of two decimals at the finer of the two scales: after - before. */
export function minusDecimal(a: Decimal, b: Decimal): Decimal {
  const scale = Math.max(a.scale, b.scale)
  return { digits: a.digits * 10 ** (scale - a.scale) - b.digits * 10 ** (scale - b.scale), scale }
}
