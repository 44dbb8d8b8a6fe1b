import { decimal } from '@/lib/domain/decimal'

/** A measured number as keyed. */
export function measured(text: string, unit: string) {
  return { kind: 'number', ...decimal(text), unit, text }
}
