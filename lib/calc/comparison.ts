/** Relative slack of every comparison, so that 0.1 + 0.2 meets 0.3. It is far below any instrument's resolution. */
const RELATIVE_SLACK = 1e-9

function slackOf(a: number, b: number): number {
  return RELATIVE_SLACK * Math.max(Math.abs(a), Math.abs(b))
}

/** True when `value` reaches `limit`, the end point included, with a relative slack of 1e-9. */
export function isAtLeast(value: number, limit: number): boolean {
  return value >= limit - slackOf(value, limit)
}

/** True when `value` does not pass `limit`, the end point included, with a relative slack of 1e-9. */
export function isAtMost(value: number, limit: number): boolean {
  return value <= limit + slackOf(value, limit)
}

/** True when `value` passes `limit` by more than the slack: the opposite of {@link isAtMost}. */
export function isAbove(value: number, limit: number): boolean {
  return !isAtMost(value, limit)
}

/** True when `value` falls short of `limit` by more than the slack: the opposite of {@link isAtLeast}. */
export function isBelow(value: number, limit: number): boolean {
  return !isAtLeast(value, limit)
}

/** The whole number at or above `value`; a value that is whole within the slack stays where it is (3.0000000000000004 is 3). */
export function roundUp(value: number): number {
  const nearest = Math.round(value)
  return isAtMost(value, nearest) ? Math.min(Math.ceil(value), nearest) : Math.ceil(value)
}

/** The whole number at or below `value`; a value that is whole within the slack stays where it is (2.9999999999999996 is 3). */
export function roundDown(value: number): number {
  const nearest = Math.round(value)
  return isAtLeast(value, nearest) ? Math.max(Math.floor(value), nearest) : Math.floor(value)
}
