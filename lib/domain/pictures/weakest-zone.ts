import { compareFractions, type Fraction, fractionOf, toNumber } from '../decimal'
import { convertExact } from '../judge/exact-units'
import type { VerdictKind } from '../judge/verdict'
import { type Reading, showReading, type Unit } from '../reading'

export type ZoneGrid = {
  stations: readonly { name: string; mm: number }[]
  /** Clock positions by their angle, increasing from 12 o'clock. */
  ring: readonly { clock: string; deg: number }[]
  byMark: ReadonlyMap<string, Reading>
  unit: Unit
  verdictAt: (mark: string) => VerdictKind | null
  /** Readings below this value, in the map's unit, belong to the lowest step of the legend. */
  lowestStepTop: number
}

/** A mark's field: from half way to its neighbours, degrees between 0 and 360; a field over 12 o'clock comes as two. */
export type ZoneField = { fromMm: number; toMm: number; fromDeg: number; toDeg: number }
export type WeakestZone = { marks: string[]; text: string; fields: (ZoneField & { mark: string })[] }

/**
 * The weakest part of the surface as marked: through-wall first, otherwise the lowest reading, with the marks beside it (round the clock too) that fail, or where
 * none fails that lie in the lowest step of the legend. Null where nothing was read or all marks read the same.
 */
export function weakestZone(grid: ZoneGrid): WeakestZone | null {
  const marks = grid.stations.flatMap((station, column) =>
    grid.ring.map(({ clock }, row) => ({ mark: `${station.name}-${clock}`, column, row })),
  )
  const valueAt = (mark: string): Fraction | null => {
    const reading = grid.byMark.get(mark)
    return reading?.kind === 'number' ? convertExact(fractionOf(reading), reading.unit, grid.unit) : null
  }
  const isHole = (mark: string): boolean => grid.byMark.get(mark)?.kind === 'through-wall'
  const valued = marks.flatMap((one) => {
    const value = valueAt(one.mark)
    return value ? [{ ...one, value }] : []
  })
  const least = valued.reduce<Fraction | null>(
    (low, one) => (low && compareFractions(low, one.value) <= 0 ? low : one.value),
    null,
  )
  const lowest = valued.filter((one) => least !== null && compareFractions(one.value, least) === 0)
  const holes = marks.filter(({ mark }) => isHole(mark))
  const seeds = holes.length > 0 ? holes : lowest
  if (seeds.length === 0 || (holes.length === 0 && lowest.length === valued.length)) return null
  const isFailing = holes.length === 0 && seeds.every(({ mark }) => grid.verdictAt(mark) === 'fail')
  const belongs = (mark: string): boolean => {
    if (isHole(mark)) return true
    const value = valueAt(mark)
    if (!value) return false
    return isFailing ? grid.verdictAt(mark) === 'fail' : toNumber(value) < grid.lowestStepTop - 1e-9
  }
  const seeded = new Set(seeds.map((one) => one.mark))
  const zone = grown(seeds, marks, grid.ring.length, (mark) => seeded.has(mark) || belongs(mark))
  const names = zone.map((one) => one.mark)
  return {
    marks: names,
    text: textOf(zone, holes, lowest, grid),
    fields: zone.flatMap((one) => fieldsOf(one, grid).map((field) => ({ ...field, mark: one.mark }))),
  }
}

type Placed = { mark: string; column: number; row: number }

function grown(
  seeds: readonly Placed[],
  all: readonly Placed[],
  rows: number,
  belongs: (mark: string) => boolean,
): Placed[] {
  const at = new Map(all.map((one) => [`${one.column}/${one.row}`, one]))
  const zone = new Set<Placed>()
  const next: (Placed | undefined)[] = seeds.map((one) => at.get(`${one.column}/${one.row}`))
  for (let one = next.pop(); next.length > 0 || one; one = next.pop()) {
    if (!one || zone.has(one) || !belongs(one.mark)) continue
    zone.add(one)
    for (const step of [-1, 1]) {
      next.push(at.get(`${one.column + step}/${one.row}`))
      if (rows > 2) next.push(at.get(`${one.column}/${(one.row + step + rows) % rows}`))
    }
  }
  return all.filter((one) => zone.has(one))
}

function textOf(zone: readonly Placed[], holes: readonly Placed[], lowest: readonly Placed[], grid: ZoneGrid): string {
  const names = (list: readonly Placed[]): string => list.map((one) => one.mark).join(', ')
  const reading = lowest[0] ? grid.byMark.get(lowest[0].mark) : undefined
  const stations = grid.stations.filter((_, column) => zone.some((one) => one.column === column))
  const clocks = grid.ring.filter((_, row) => zone.some((one) => one.row === row))
  const where =
    zone.length <= 8
      ? names(zone)
      : `${zone.length} marks, stations ${stations.map((one) => one.name).join(' ')} at clock ${clocks.map((one) => one.clock).join(', ')}`
  return [
    `weakest zone ${where}`,
    ...(holes.length > 0 ? [`through-wall at ${names(holes)}`] : []),
    ...(reading ? [`lowest ${showReading(reading)} at ${names(lowest)}`] : []),
  ].join('; ')
}

function fieldsOf({ column, row }: Placed, { stations, ring }: ZoneGrid): ZoneField[] {
  const mm = (at: number): number => stations[at]?.mm ?? 0
  const fromMm = column === 0 ? mm(0) : (mm(column - 1) + mm(column)) / 2
  const toMm = column === stations.length - 1 ? mm(column) : (mm(column) + mm(column + 1)) / 2
  const deg = (at: number): number => {
    const turns = Math.floor(at / ring.length)
    return (ring[at - turns * ring.length]?.deg ?? 0) + turns * 360
  }
  const fromDeg = (deg(row - 1) + deg(row)) / 2
  const toDeg = (deg(row) + deg(row + 1)) / 2
  if (fromDeg < 0)
    return [
      { fromMm, toMm, fromDeg: 0, toDeg },
      { fromMm, toMm, fromDeg: fromDeg + 360, toDeg: 360 },
    ]
  if (toDeg > 360)
    return [
      { fromMm, toMm, fromDeg, toDeg: 360 },
      { fromMm, toMm, fromDeg: 0, toDeg: toDeg - 360 },
    ]
  return [{ fromMm, toMm, fromDeg, toDeg }]
}
