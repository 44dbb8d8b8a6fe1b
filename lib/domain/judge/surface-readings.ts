import { compareFractions, type Fraction, fractionOf, timesFraction } from '../decimal'
import type { Reading } from '../reading'
import type { MarkedReading } from '../records/common'
import { minusDecimal, minusFraction } from './exact-units'
import type { DraftOf } from './yield-builder'

const NONE: Reading = { kind: 'not-inspected' }
type Extraction = NonNullable<DraftOf<'cleanliness'>['extractions']>[number]

/**
 * Salt in mg/m² of one extraction, exactly: 100 c V (after − blank) / A; null when a value is missing or the reading lies below its blank, which is not usable.
 * @source ISO 8502-6, ISO 8502-9; as mixture of salts by conductivity
 */
export function saltOf({ blank, after, water, area, factor }: Partial<Extraction>): Fraction | null {
  if (!blank || !after || !water || !area || !factor) return null
  const rise = minusFraction(fractionOf(after), fractionOf(blank))
  const patch = fractionOf(area)
  if (rise.numerator < 0n || patch.numerator <= 0n || factor.digits <= 0 || water.digits <= 0) return null
  const whole = timesFraction(timesFraction(fractionOf(factor), fractionOf(water)), rise)
  return { numerator: whole.numerator * 100n * patch.denominator, denominator: whole.denominator * patch.numerator }
}

const PLACES = 6

/** A salt figure as a reading: exact where it ends within six places, else rounded up, so that computing does not lower it to a limit. */
export function saltReading(extraction: Partial<Extraction>): Reading {
  const exact = saltOf(extraction)
  if (!exact) return NONE
  const scaled = exact.numerator * 10n ** BigInt(PLACES)
  const up = scaled % exact.denominator === 0n ? scaled / exact.denominator : scaled / exact.denominator + 1n
  let [digits, scale] = [Number(up), PLACES]
  while (scale > 0 && digits % 10 === 0) [digits, scale] = [digits / 10, scale - 1]
  return Number.isSafeInteger(digits) && digits <= 1e12
    ? { kind: 'number', digits, scale, unit: 'mg/m2', text: String(digits / 10 ** scale).slice(0, 24) }
    : NONE
}

/**
 * Profile heights of a record: as read, or less the film of the replica tape where it was read with it. With a replica tape of which nobody says whether the film
 * is in the reading, without the film's thickness, or at or below it, there is no height.
 * @source ISO 8503-5
 */
export function profileReadings(record: DraftOf<'profile'>): Partial<MarkedReading>[] {
  const readings = record.readings ?? []
  if (record.method !== 'replica tape' || record.tapeGross === 'no') return readings
  return readings.map((one) => ({
    ...one,
    reading: netOf(one.reading, record),
    ...(one.taps ? { taps: one.taps.map((tap) => netOf(tap, record)) } : {}),
  }))
}

function netOf(reading: Reading, { tapeGross, film }: Pick<DraftOf<'profile'>, 'tapeGross' | 'film'>): Reading {
  if (reading.kind !== 'number') return reading
  if (tapeGross !== 'yes' || !film || film.unit !== reading.unit) return NONE
  if (compareFractions(fractionOf(reading), fractionOf(film)) <= 0) return NONE
  const net = minusDecimal(reading, film)
  return { kind: 'number', ...net, unit: reading.unit, text: String(net.digits / 10 ** net.scale).slice(0, 24) }
}
