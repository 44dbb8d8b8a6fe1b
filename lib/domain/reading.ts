import * as z from 'zod'
import { Decimal, parseDecimal, showDecimal } from './decimal'

/** Units as read. No unit is converted on entry. Shore scales and Barcol are never converted. */
export const UNITS = [
  'mm',
  'um',
  'mil',
  'in',
  'degC',
  'degF',
  'K',
  '%',
  'MPa',
  'bar',
  'psi',
  'mg/m2',
  'uS/cm',
  'ml',
  'mm2',
  'mm3',
  'g',
  'kg',
  'min',
  's',
  'h',
  'ShoreD',
  'ShoreA',
  'Barcol',
  'class',
  'pcs',
  'kits',
  'rolls',
  'm',
  'sets',
  'N',
  'ratio',
  'plies',
  'yr',
  'mm/mm',
  'J/m2',
  'g/m2',
  'g/cm3',
  'um/mK',
] as const
export const Unit = z.enum(UNITS)
export type Unit = z.infer<typeof Unit>

const UNIT_TEXT: Partial<Record<Unit, string>> = {
  um: 'µm',
  degC: '°C',
  degF: '°F',
  'mg/m2': 'mg/m²',
  'uS/cm': 'µS/cm',
  mm2: 'mm²',
  mm3: 'mm³',
  'J/m2': 'J/m²',
  'g/m2': 'g/m²',
  'g/cm3': 'g/cm³',
  'um/mK': 'µm/(m·K)',
  ShoreD: 'Shore D',
  ShoreA: 'Shore A',
}

/** The unit as the trade prints it. */
export function showUnit(unit: Unit): string {
  return UNIT_TEXT[unit] ?? unit
}

const Keyed = z.string().min(1).max(24)
const Reason = z.string().trim().min(3).max(300)

/**
 * One reading as taken: digits and scale with the unit and the text as keyed, or one of the values that are no number.
 * `below` and `above` state a detection or range limit; they are never averaged.
 */
export const Reading = z.lazy(() =>
  z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('number'), ...Decimal.shape, unit: Unit, text: Keyed }),
    z.strictObject({ kind: z.literal('below'), ...Decimal.shape, unit: Unit, text: Keyed }),
    z.strictObject({ kind: z.literal('above'), ...Decimal.shape, unit: Unit, text: Keyed }),
    z.strictObject({ kind: z.literal('through-wall') }),
    z.strictObject({ kind: z.literal('no-access') }),
    z.strictObject({ kind: z.literal('not-applicable'), reason: Reason }),
    z.strictObject({ kind: z.literal('not-inspected') }),
  ]),
)
export type Reading = z.infer<typeof Reading>
export type NumberReading = Extract<Reading, { kind: 'number' }>

/** A measured value that must be a number: single fields such as a mass or a temperature. */
export const Measured = z.lazy(() =>
  z.strictObject({ kind: z.literal('number'), ...Decimal.shape, unit: Unit, text: Keyed }),
)
export type Measured = z.infer<typeof Measured>

/** A measured number in one of the named units. */
export function measuredIn(...units: readonly [Unit, ...Unit[]]) {
  return Measured.refine((value) => units.includes(value.unit), {
    error: `unit must be ${units.map(showUnit).join(' or ')}`,
  })
}

/**
 * Parse what was keyed into a reading: `76`, `7.30`, `< 3`, `> 999`, `TW`, `NA` (no access), `-` (not inspected).
 * @returns null when the text is none of these; not applicable is never keyed as text, it needs its reason
 */
export function parseReading(text: string, unit: Unit): Reading | null {
  const keyed = text.trim()
  const upper = keyed.toUpperCase()
  if (upper === 'TW') return { kind: 'through-wall' }
  if (upper === 'NA') return { kind: 'no-access' }
  if (keyed === '-' || keyed === '–') return { kind: 'not-inspected' }
  const sign = keyed.startsWith('<') ? 'below' : keyed.startsWith('>') ? 'above' : 'number'
  const value = parseDecimal(sign === 'number' ? keyed : keyed.slice(1))
  return value && keyed.length <= 24 ? { kind: sign, ...value, unit, text: keyed } : null
}

/** A number reading from literal text, for data and tests. @throws RangeError when the text is no number */
export function measured(text: string, unit: Unit): Measured {
  const reading = parseReading(text, unit)
  if (reading?.kind !== 'number') throw new RangeError(`not a number: ${text}`)
  return reading
}

/** Show a reading without its unit, digits as recorded. */
export function showReading(reading: Reading): string {
  switch (reading.kind) {
    case 'number':
      return showDecimal(reading)
    case 'below':
      return `< ${showDecimal(reading)}`
    case 'above':
      return `> ${showDecimal(reading)}`
    case 'through-wall':
      return 'TW'
    case 'no-access':
      return 'NA'
    case 'not-applicable':
      return 'n/a'
    case 'not-inspected':
      return '–'
  }
}

/** Show a reading with its unit where it has one. */
export function showReadingUnit(reading: Reading): string {
  return 'unit' in reading ? `${showReading(reading)} ${showUnit(reading.unit)}` : showReading(reading)
}
