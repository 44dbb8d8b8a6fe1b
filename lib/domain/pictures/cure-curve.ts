import { isAtLeast } from '@/lib/calc/comparison'
import { cureProgress } from '@/lib/calc/cure-progress'
import { isRefused } from '@/lib/calc/refusal'
import { toNumber } from '../decimal'
import type { CurePoint } from '../judge/cure-series'

export type CureCurve = {
  /** Equivalent cure reached at each logged point. */
  points: { atMs: number; share: number }[]
  total: number
  /** The moment at which it reached 1. */
  doneAtMs: number | null
}

const BISECTIONS = 40

/** Equivalent cure over time from a table of °C and minutes, summed over the stretches; why not where the formula refuses one. */
export function cureCurve(
  table: readonly (readonly [number, number])[],
  stretches: readonly (readonly CurePoint[])[],
): (CureCurve & { ok: true }) | { ok: false; refused: string } {
  const points: CureCurve['points'] = []
  let [total, doneAtMs]: [number, number | null] = [0, null]
  for (const stretch of stretches) {
    const [first] = stretch
    if (!first || stretch.length < 2) return { ok: false, refused: 'log_too_short' }
    points.push({ atMs: first.atMs, share: total })
    for (const [index, end] of stretch.entries()) {
      const start = stretch[index - 1]
      if (!start) continue
      const gained = partOf(table, start, end, 1)
      if (typeof gained === 'string') return { ok: false, refused: gained }
      if (doneAtMs === null && isAtLeast(total + gained, 1)) doneAtMs = momentOfOne(table, start, end, 1 - total)
      total += gained
      points.push({ atMs: end.atMs, share: total })
    }
  }
  return { ok: true, points, total, doneAtMs }
}

/** What a share of one step between two logged points adds; the refusal's code where it cannot be computed. */
function partOf(
  table: readonly (readonly [number, number])[],
  start: CurePoint,
  end: CurePoint,
  share: number,
): number | string {
  const [from, to] = [toNumber(start.temp), toNumber(end.temp)]
  const answer = cureProgress({
    table,
    log: [
      [0, from],
      [((end.atMs - start.atMs) / 60_000) * share, from + (to - from) * share],
    ],
  })
  return isRefused(answer) ? answer.refused : answer.progress
}

function momentOfOne(
  table: readonly (readonly [number, number])[],
  start: CurePoint,
  end: CurePoint,
  missing: number,
): number {
  let [low, high] = [0, 1]
  for (let step = 0; step < BISECTIONS; step += 1) {
    const share = (low + high) / 2
    const part = partOf(table, start, end, share)
    if (typeof part === 'number' && part < missing) low = share
    else high = share
  }
  return start.atMs + high * (end.atMs - start.atMs)
}
