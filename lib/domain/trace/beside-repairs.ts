import type { RegisterRow } from '../fold/register-row'

/** Two repairs whose wraps share a stretch of one line, or touch. */
export type Overlap = { a: string; b: string; line: string; sharedMm: number }

/**
 * Repairs over or beside each other: stretches on the same line from the same datum that overlap. Whether it matters is for the design; repairs that
 * are removed or abandoned, or whose extent is not designed, are not asked. Other datums cannot be compared and are left out.
 */
export function overlapsOf(rows: readonly RegisterRow[]): Overlap[] {
  const standing = rows.filter((row) => row.status !== 'removed' && row.status !== 'abandoned')
  return standing.flatMap((a, at) =>
    standing.slice(at + 1).flatMap((b): Overlap[] => {
      if (a.line !== b.line || a.datum !== b.datum || !a.extent || !b.extent) return []
      const sharedMm = Math.min(a.extent.toMm, b.extent.toMm) - Math.max(a.extent.fromMm, b.extent.fromMm)
      return sharedMm >= 0 ? [{ a: a.number, b: b.number, line: a.line, sharedMm }] : []
    }),
  )
}
