import type { FactOf } from '@/lib/domain/facts/fact-kinds'
import { type RecordedQuery, recordedRows } from '@/lib/server/store/readings-sample'
import type { TrailRow } from '@/lib/server/store/search-trail'
import type { Store, TenantId } from '@/lib/server/store/store'
import { factOfRow } from './audit-line'
import { type KeyedReading, readingsInRecord } from './audit-readings'

export type PopulationQuery = RecordedQuery & { point: string | null; withSeries: boolean }
/** Readings to draw from: how many each record holds, in order of leaf, and the leaves whose bytes were changed so that nothing can be drawn from them. */
export type Population = { readingCount: number; records: { leaf: number; count: number }[]; brokenLeaves: number[] }
/** One reading of the population with the fact that holds it. */
export type DrawnReading = { number: number; row: TrailRow; fact: FactOf<'recorded'>; reading: KeyedReading }

/** Count the population: every reading of every record that the query takes in, in order of leaf and of its place in the record. */
export async function countPopulation(store: Store, tenant: TenantId, query: PopulationQuery): Promise<Population> {
  const population: Population = { readingCount: 0, records: [], brokenLeaves: [] }
  for await (const row of recordedRows(store, tenant, query)) {
    const fact = factOfRow(row)
    if (fact?.kind !== 'recorded') {
      population.brokenLeaves.push(row.leaf)
      continue
    }
    const count = readingsOf(fact, query).length
    if (count === 0) continue
    population.records.push({ leaf: row.leaf, count })
    population.readingCount += count
  }
  return population
}

/** The readings of some numbers of the population, in the order asked for. A number beyond it gives none. */
export async function readingsOfNumbers(
  store: Store,
  tenant: TenantId,
  query: PopulationQuery,
  population: Population,
  numbers: readonly number[],
): Promise<DrawnReading[]> {
  const places = new Map<number, { number: number; at: number }[]>()
  const sorted = [...numbers].sort((a, b) => a - b)
  let [first, next] = [0, 0]
  for (const { leaf, count } of population.records) {
    for (; next < sorted.length && (sorted[next] ?? 0) < first + count; next += 1) {
      const number = sorted[next] ?? 0
      places.set(leaf, [...(places.get(leaf) ?? []), { number, at: number - first }])
    }
    first += count
  }
  const found = new Map<number, DrawnReading>()
  for await (const row of recordedRows(store, tenant, query)) {
    const wanted = places.get(row.leaf)
    const fact = wanted ? factOfRow(row) : null
    if (!wanted || fact?.kind !== 'recorded') continue
    const readings = readingsOf(fact, query)
    for (const { number, at } of wanted) {
      const reading = readings[at]
      if (reading) found.set(number, { number, row, fact, reading })
    }
  }
  return numbers.flatMap((number) => found.get(number) ?? [])
}

function readingsOf(fact: FactOf<'recorded'>, { point, withSeries }: PopulationQuery): KeyedReading[] {
  return point === null || fact.body.point === point ? readingsInRecord(fact.body.record, withSeries) : []
}
