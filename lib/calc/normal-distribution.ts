const SERIES_LIMIT = 3
const SERIES_TERMS = 200
const FRACTION_DEPTH = 120

/** erf by its power series: full double precision for |x| up to 3. */
function erfBySeries(x: number): number {
  let term = x
  let sum = x
  for (let n = 1; n < SERIES_TERMS && Math.abs(term) > Number.EPSILON * Math.abs(sum) * 0.01; n += 1) {
    term *= (-x * x) / n
    sum += term / (2 * n + 1)
  }
  return (2 / Math.sqrt(Math.PI)) * sum
}

/** erfc by Laplace's continued fraction, for x of 3 or more. */
function erfcByFraction(x: number): number {
  let tail = x
  for (let k = FRACTION_DEPTH; k >= 1; k -= 1) tail = x + k / 2 / tail
  return Math.exp(-x * x) / (Math.sqrt(Math.PI) * tail)
}

/**
 * Standard normal distribution function Phi(z); infinite z gives 0 or 1. Error below 1e-12.
 * @source power series and continued fraction of erf, Abramowitz and Stegun 7.1.5 and 7.1.14.
 */
export function normalDistribution(z: number): number {
  const x = Math.abs(z) / Math.SQRT2
  if (x === Number.POSITIVE_INFINITY) return z > 0 ? 1 : 0
  const upperTail = x < SERIES_LIMIT ? (1 - erfBySeries(x)) / 2 : erfcByFraction(x) / 2
  return z > 0 ? 1 - upperTail : upperTail
}
