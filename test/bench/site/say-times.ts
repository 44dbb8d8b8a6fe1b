import type { Keystroke } from './keystroke-times'

/** Keys in words: to the paint that shows the changed verdict, and to the paint of any key, as the browser tells it. */
export function keysSaid(keys: readonly Keystroke[]): string {
  const paintOf = ({ paintMs }: Keystroke) => (paintMs === null ? [] : [paintMs])
  const shown = keys.filter(({ verdict }) => verdict === 'in this paint')
  const later = keys.filter(({ verdict }) => verdict === 'later').length
  return [
    `${keys.length} keys`,
    `to the paint of the changed verdict ${said(shown.flatMap(paintOf))}`,
    `changed after their paint ${later}`,
    `to the paint of any key ${said(keys.flatMap(paintOf))}`,
  ].join('; ')
}

/** Least and median of times in milliseconds. */
export function spread(taken: readonly number[]): string {
  return `least ${Math.min(...taken).toFixed(0)}, median ${at(taken, 0.5).toFixed(0)} ms`
}

export function kB(bytes: number): string {
  return `${(bytes / 1000).toFixed(1)} kB`
}

function said(taken: readonly number[]): string {
  if (taken.length === 0) return 'none'
  const [median, most] = [at(taken, 0.5).toFixed(0), at(taken, 0.95).toFixed(0)]
  return `median ${median}, 95th ${most}, worst ${Math.max(...taken).toFixed(0)} ms of ${taken.length}`
}

function at(taken: readonly number[], share: number): number {
  const sorted = [...taken].sort((a, b) => a - b)
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN
}
