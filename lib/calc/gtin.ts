import { text } from '@/lib/calc/argument'
import { formula } from '@/lib/calc/formula'
import { refuse } from '@/lib/calc/refusal'

function checkDigitOf(body: string): number {
  const sum = [...body].reverse().reduce((total, digit, index) => total + Number(digit) * (index % 2 === 0 ? 3 : 1), 0)
  return (10 - (sum % 10)) % 10
}

/** True for 8, 12, 13 or 14 digits of which the last is the check digit of the rest. */
export function isGtin(digits: string): boolean {
  return /^(?:\d{8}|\d{12,14})$/.test(digits) && checkDigitOf(digits.slice(0, -1)) === Number(digits.slice(-1))
}

/**
 * Check digit of a GTIN body of 7, 11, 12 or 13 digits: weights 3,1,3,1 from the right; (10 - sum mod 10) mod 10.
 * Refuses `gtin_body` for anything else. @source GS1 General Specifications section 7. Confidence high.
 */
export const gtinCheckDigit = formula({ body: text('body') }, ({ body }) =>
  /^(?:\d{7}|\d{11,13})$/.test(body) ? { digit: checkDigitOf(body) } : refuse('gtin_body'),
)

/**
 * Whether a GTIN of 8, 12, 13 or 14 digits has the right check digit, and its form padded to 14 digits with zeros.
 * Any other text is not a GTIN: `isMet` false and no padded form. Refuses `missing_gtin`.
 * @source GS1 General Specifications sections 3 and 7. Confidence high.
 */
export const gtinMeets = formula({ gtin: text('gtin') }, ({ gtin }) => ({
  isMet: isGtin(gtin),
  gtin14: /^(?:\d{8}|\d{12,14})$/.test(gtin) ? gtin.padStart(14, '0') : null,
}))
