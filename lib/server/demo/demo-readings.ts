import { measured, parseReading, type Reading, type Unit } from '@/lib/domain/reading'

type Marked = { mark: string; reading: Reading; taps?: Reading[] }
const STATIONS = ['A', 'B', 'C', 'D', 'E'] as const

/** A measured value from literal text, in its unit. */
export const mm = (text: string) => measured(text, 'mm')
export const degC = (text: string) => measured(text, 'degC')
export const mpa = (text: string) => measured(text, 'MPa')
export const grams = (text: string) => measured(text, 'g')

function readingOf(text: string, unit: Unit): Reading {
  const reading = parseReading(text, unit)
  if (!reading) throw new RangeError(`not a reading: ${text}`)
  return reading
}

/** A grid of readings A to E by clock position: `{ '12': '9.1 9.0 9.1 9.0 9.2' }` gives marks `A-12` to `E-12`. */
export function gridReadings(rows: Record<string, string>, unit: Unit): Marked[] {
  return clocksOf(rows).flatMap((clock) =>
    (rows[clock] ?? '')
      .split(' ')
      .map((text, step) => ({ mark: `${STATIONS[step] ?? '?'}-${clock}`, reading: readingOf(text, unit) })),
  )
}

/** Clock positions of a grid in the order 12, 3, 6, 9: object keys that are whole numbers come sorted, 12 last. */
function clocksOf(rows: Record<string, string>): string[] {
  return Object.keys(rows).sort((a, b) => (Number(a) % 12) - (Number(b) % 12))
}

/** Readings at numbered marks: `S1`, `S2` and on. */
export function listReadings(letter: string, text: string, unit: Unit): Marked[] {
  return text.split(' ').map((one, step) => ({ mark: `${letter}${step + 1}`, reading: readingOf(one, unit) }))
}

/** The filler's marks: rows −25, 0, +25 mm from the hole by three clock positions; `/` parts the rows. */
export function fillerReadings(clocks: readonly string[], text: string, unit: Unit): Marked[] {
  return text.split(' / ').flatMap((row, step) =>
    row.split(' ').map((one, place) => ({
      mark: `${['-25', '0', '+25'][step] ?? '?'}@${clocks[place] ?? '?'}`,
      reading: readingOf(one, unit),
    })),
  )
}

/** The chalk grid of a repair: five stations from the leak and four clock positions. */
export function chalkGrid(stations: string) {
  return {
    stations: stations.split(' ').map((text, step) => ({ name: STATIONS[step] ?? '?', fromLeak: mm(text) })),
    clocks: ['12', '3', '6', '9'],
  }
}
