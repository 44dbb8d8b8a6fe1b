import { type Fraction, fractionOf, meanOf, plusFraction, showDecimal, showFraction } from '../decimal'
import { type NumberReading, type Reading, showReading, showUnit } from '../reading'
import type { Specification } from '../specification'
import type { JudgeFrame, Taken } from './frame'
import type { Tapped } from './judge-context'
import { type Check, findingOf } from './outcome'

type TapRule = Specification['tapRule']

/** A reading said to come from taps equals their mean or median as the specification states; otherwise it is not proven, taps and reading as they are. */
export function tapChecks(readings: readonly Taken[], frame: JudgeFrame): Check[] {
  const rule = frame.context.specification.body.tapRule
  return readings.flatMap((one) =>
    (one.tapped ?? [])
      .filter((tapped) => !isOfItsTaps(tapped, rule))
      .map(
        ({ reading, taps }): Check => ({
          verdict: 'not proven',
          finding: findingOf(frame, 'reading-not-of-its-taps', {
            mark: one.mark,
            found: showReading(reading),
            limit: limitOf(reading, taps, rule),
            detail: taps.map(showReading).join(', '),
            facts: [one.fact],
          }),
        }),
      ),
  )
}

/**
 * Whether a reading is the stated figure of its taps, at its own scale, half rounded away from zero. Taps in another unit, and taps that are no number under a
 * reading that is one, give no figure; a reading that is no number comes from taps that all say the same as it.
 */
export function isOfItsTaps({ reading, taps }: Tapped, rule: TapRule): boolean {
  if (reading.kind !== 'number')
    return taps.every(
      (tap) =>
        tap.kind === reading.kind && showReading(tap) === showReading(reading) && unitOf(tap) === unitOf(reading),
    )
  const figure = figureOf(reading, taps, rule)
  return figure !== null && showFraction(figure, reading.scale) === showDecimal(reading)
}

function figureOf(reading: NumberReading, taps: readonly Reading[], rule: TapRule): Fraction | null {
  const numbers = taps.flatMap((tap) => (tap.kind === 'number' && tap.unit === reading.unit ? [tap] : []))
  if (numbers.length !== taps.length) return null
  return rule === 'mean' ? meanOf(numbers) : medianOf(numbers)
}

function medianOf(values: readonly NumberReading[]): Fraction | null {
  const scale = Math.max(0, ...values.map((one) => one.scale))
  const sorted = values.toSorted((a, b) => a.digits * 10 ** (scale - a.scale) - b.digits * 10 ** (scale - b.scale))
  const low = sorted[Math.floor((sorted.length - 1) / 2)]
  const high = sorted[Math.ceil((sorted.length - 1) / 2)]
  if (!low || !high) return null
  const sum = plusFraction(fractionOf(low), fractionOf(high))
  return { numerator: sum.numerator, denominator: sum.denominator * 2n }
}

function limitOf(reading: Reading, taps: readonly Reading[], rule: TapRule): string {
  const figure = reading.kind === 'number' ? figureOf(reading, taps, rule) : null
  return figure && reading.kind === 'number'
    ? `${rule} ${showFraction(figure, reading.scale)} ${showUnit(reading.unit)}`
    : `${rule} of its taps`
}

function unitOf(reading: Reading): string | null {
  return 'unit' in reading ? reading.unit : null
}
