import type { Unit } from '@/lib/domain/reading'

/** What a field of numbers takes beside digits. */
export type KeyAllows = { point: boolean; sign: boolean; limits: boolean }

const LENGTH_MOST = 12
/** Units whose values may lie below zero. */
const BELOW_ZERO: ReadonlySet<Unit> = new Set<Unit>(['degC', 'degF'])

/** Whether a value in this unit may lie below zero, so that the keys offer a sign. */
export function canBeNegative(unit: Unit): boolean {
  return BELOW_ZERO.has(unit)
}

/**
 * The text after one more key: a digit, `.`, `sign` (turns the sign round), `limit` (below, above, neither, in turn), `<`, `>` or `-`. Null when the key cannot stand here: a second point, a sign where
 * nothing is below zero, a limit where none is read, or more characters than a reading has.
 */
export function keyText(typed: string, key: string, allows: KeyAllows): string | null {
  const lead = /^[<>-]/.test(typed) ? typed.slice(0, 1) : ''
  const digits = typed.slice(lead.length)
  switch (key) {
    case 'sign':
      return allows.sign && lead !== '<' && lead !== '>' ? (lead === '-' ? digits : `-${digits}`) : null
    case 'limit':
      return allows.limits && lead !== '-' ? `${lead === '' ? '<' : lead === '<' ? '>' : ''}${digits}` : null
    case '<':
    case '>':
      return allows.limits && typed === '' ? key : null
    case '-':
      return typed === '' && (allows.sign || allows.limits) ? key : null
    case '.':
      return allows.point && !digits.includes('.') && typed.length < LENGTH_MOST ? `${typed}.` : null
    default:
      return /^\d$/.test(key) && typed.length < LENGTH_MOST ? typed + key : null
  }
}
