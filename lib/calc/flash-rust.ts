import { oneOf } from '@/lib/calc/argument'
import { formula } from '@/lib/calc/formula'

const FLASH_RUST_GRADES = ['none', 'L', 'M', 'H'] as const

/**
 * Whether flash rust is at most the worst grade allowed: none < L < M < H. A statement apart from the Wa visual grade.
 * Refuses `missing_` and `unknown_` followed by the argument's name.
 * @source ISO 8501-4. Confidence high.
 */
export const flashRustMeets = formula(
  { actual: oneOf('actual', FLASH_RUST_GRADES), worstAllowed: oneOf('worst_allowed', FLASH_RUST_GRADES) },
  ({ actual, worstAllowed }) => ({
    isMet: FLASH_RUST_GRADES.indexOf(actual) <= FLASH_RUST_GRADES.indexOf(worstAllowed),
  }),
)
