/** Seconds before the end from which the countdown warns, and seconds at which the device shakes. */
const WARNS_FROM_S = 120
const SHAKES_AT_S = [120, 60, 0] as const

export type Countdown = { leftSeconds: number; stage: 'running' | 'ending' | 'over'; usedShare: number }

/** How much of a time is left, told from the observed start alone: nothing is counted, so a locked screen or a reload costs nothing. */
export function countdownOf(startMs: number, limitMinutes: number, nowMs: number): Countdown {
  const limitMs = limitMinutes * 60_000
  const leftSeconds = Math.ceil((startMs + limitMs - nowMs) / 1000)
  const usedShare = Math.min(1, Math.max(0, (nowMs - startMs) / limitMs))
  return {
    leftSeconds,
    usedShare,
    stage: leftSeconds <= 0 ? 'over' : leftSeconds <= WARNS_FROM_S ? 'ending' : 'running',
  }
}

/**
 * How long the device shakes when the time left went from one look to the next, ms on and off; null when no mark was passed. Marks passed
 * unseen, behind a locked screen, shake once, as the last of them. Without an earlier look only what lies under two minutes shakes.
 */
export function shakeBetween(beforeSeconds: number | null, leftSeconds: number): number[] | null {
  const passed = SHAKES_AT_S.filter((mark) => leftSeconds <= mark && (beforeSeconds === null || beforeSeconds > mark))
  const last = passed.at(-1)
  if (last === undefined) return null
  return last === 0 ? [900, 150, 900] : [300, 120, 300, 120, 300]
}

/** Minutes and seconds, `4:05`; with a minus once the time is over. */
export function showLeft(seconds: number): string {
  const whole = Math.abs(seconds)
  return `${seconds < 0 ? '−' : ''}${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`
}
