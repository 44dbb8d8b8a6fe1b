import type { PointRecord } from '../records/record'

/** Every mark that a record names, in order of first mention. */
export function marksOf(record: PointRecord): string[] {
  const found = new Set<string>()
  const walk = (value: unknown): void => {
    if (Array.isArray(value)) value.forEach(walk)
    else if (value !== null && typeof value === 'object') {
      for (const [name, one] of Object.entries(value)) {
        if (typeof one === 'string' && name === 'mark') found.add(one)
        else walk(one)
      }
    }
  }
  walk(record)
  return [...found]
}
