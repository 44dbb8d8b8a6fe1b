import { defaulted, list, number, oneOf, optional, pair, positive } from '@/lib/calc/argument'
import { arrheniusLifeMin } from '@/lib/calc/arrhenius-life'
import { isAbove, isAtLeast, isBelow } from '@/lib/calc/comparison'
import { formula } from '@/lib/calc/formula'
import { type MakerRow, makerTable, sortMakerTable } from '@/lib/calc/maker-table'
import { isRefused, type Refusal, refuse } from '@/lib/calc/refusal'

export type LogPoint = readonly [at: number, tempC: number]

/** Gauss-Legendre nodes and weights on -1..1, five points. */
const NODES: ReadonlyArray<readonly [node: number, weight: number]> = [
  [0, 128 / 225],
  [Math.sqrt(5 - 2 * Math.sqrt(10 / 7)) / 3, (322 + 13 * Math.sqrt(70)) / 900],
  [-Math.sqrt(5 - 2 * Math.sqrt(10 / 7)) / 3, (322 + 13 * Math.sqrt(70)) / 900],
  [Math.sqrt(5 + 2 * Math.sqrt(10 / 7)) / 3, (322 - 13 * Math.sqrt(70)) / 900],
  [-Math.sqrt(5 + 2 * Math.sqrt(10 / 7)) / 3, (322 - 13 * Math.sqrt(70)) / 900],
]
/** Widest temperature span of one quadrature panel, K: the rate is smooth between rows, so the error is far below 1e-9. */
const PANEL_K = 5
const BISECTIONS = 80

type Rate = (tempC: number) => number

/** Part of the log in which temperature is linear and no table row lies inside: the rate is smooth there. */
interface Panel {
  readonly start: LogPoint
  readonly end: LogPoint
}

function integral(rate: Rate, { start, end }: Panel): number {
  const half = (end[0] - start[0]) / 2
  const sum = NODES.reduce((total, [node, weight]) => {
    const share = (1 + node) / 2
    return total + weight * rate(start[1] + share * (end[1] - start[1]))
  }, 0)
  return half * sum
}

function splitSegment(start: LogPoint, end: LogPoint, rowTemps: readonly number[]): Panel[] {
  const rise = end[1] - start[1]
  const shares = rowTemps.map((temp) => (temp - start[1]) / rise).filter((share) => share > 0 && share < 1)
  const pieces = Math.max(1, Math.ceil(Math.abs(rise) / PANEL_K))
  for (let piece = 1; piece < pieces; piece += 1) shares.push(piece / pieces)
  const points = [...shares.sort((a, b) => a - b), 1].map((share): LogPoint => {
    return share === 1 ? end : [start[0] + share * (end[0] - start[0]), start[1] + share * rise]
  })
  return points.map((point, index) => ({ start: points[index - 1] ?? start, end: point }))
}

function checkLog(log: readonly LogPoint[], maxGap: number | null): Refusal | null {
  if (log.length < 2) return refuse('log_too_short')
  const gaps = log.flatMap((point, index) => {
    const before = log[index - 1]
    return before === undefined ? [] : [point[0] - before[0]]
  })
  if (gaps.some((gap) => gap <= 0)) return refuse('log_not_increasing')
  return maxGap !== null && gaps.some((gap) => isAbove(gap, maxGap)) ? refuse('gap_in_log') : null
}

/** Rate 1/tau at a temperature. Beyond the rows (conservative mode only): 0 below the coldest, the hottest row's above. */
function rateOf(sorted: readonly MakerRow[]): Rate {
  const hottest = sorted.at(-1)
  return (tempC) => {
    const lifeMin = arrheniusLifeMin(sorted, tempC)
    if (lifeMin !== null) return 1 / lifeMin
    return hottest !== undefined && tempC > hottest[0] ? 1 / hottest[1] : 0
  }
}

function momentOfOne(rate: Rate, panel: Panel, missing: number): number {
  let [low, high] = [0, 1]
  for (let step = 0; step < BISECTIONS; step += 1) {
    const share = (low + high) / 2
    const at = panel.start[0] + share * (panel.end[0] - panel.start[0])
    const part: Panel = { start: panel.start, end: [at, panel.start[1] + share * (panel.end[1] - panel.start[1])] }
    if (integral(rate, part) < missing) low = share
    else high = share
  }
  return panel.start[0] + high * (panel.end[0] - panel.start[0])
}

/**
 * Cure reached over a logged temperature (time in the table's time unit, degC): X = integral dt / tau(T(t)), temperature linear
 * between logged points, tau by Arrhenius between the maker's rows. Cured at X >= 1; `doneAt` is the moment of X = 1 or null.
 * `conservative` mode, only on request: nothing counts below the coldest row, the hottest row's rate above the hottest row; the
 * answer carries its mode. Refuses `log_too_short`, `log_not_increasing`, `gap_in_log`, `outside_table`, and what
 * `sortMakerTable` refuses.
 * @source additivity of one rate law, textbook. Confidence medium: vitrification breaks it, a hardness test still decides.
 */
export const cureProgress = formula(
  {
    table: makerTable,
    log: list('log', pair('log', number('log'), number('log'))),
    mode: defaulted(oneOf('mode', ['refuse', 'conservative']), 'refuse'),
    maxGap: optional(positive('max_gap')),
  },
  ({ table, log, mode, maxGap }) => {
    const sorted = sortMakerTable(table, 2)
    if (isRefused(sorted)) return sorted
    const problem = checkLog(log, maxGap)
    if (problem !== null) return problem
    const rowTemps = sorted.map(([tempC]) => tempC)
    const [coldest, hottest] = [Math.min(...rowTemps), Math.max(...rowTemps)]
    if (mode === 'refuse' && log.some(([, tempC]) => isBelow(tempC, coldest) || isAbove(tempC, hottest))) {
      return refuse('outside_table')
    }
    const rate = rateOf(sorted)
    let [progress, doneAt]: [number, number | null] = [0, null]
    for (const [index, end] of log.entries()) {
      const start = log[index - 1]
      if (start === undefined) continue
      for (const panel of splitSegment(start, end, rowTemps)) {
        const gained = integral(rate, panel)
        if (doneAt === null && gained > 0 && isAtLeast(progress + gained, 1))
          doneAt = momentOfOne(rate, panel, 1 - progress)
        progress += gained
      }
    }
    return { progress, isCured: isAtLeast(progress, 1), doneAt, mode }
  },
)
