/** Mean of at least one number. */
export function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length
}

/** Median of at least one number: the middle value, or the mean of the two middle values. */
export function medianOf(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b)
  const middle = Math.floor(sorted.length / 2)
  return meanOf(sorted.slice(sorted.length % 2 === 1 ? middle : middle - 1, middle + 1))
}

/** Sample standard deviation (n - 1), or null below two values: it does not exist, it is not 0. */
export function sampleSdOf(values: readonly number[]): number | null {
  if (values.length < 2) return null
  const mean = meanOf(values)
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1))
}

/** Indices, from 0, of the values that the test picks out. */
export function indicesWhere(values: readonly number[], isPicked: (value: number) => boolean): number[] {
  return [...values.entries()].filter(([, value]) => isPicked(value)).map(([index]) => index)
}
