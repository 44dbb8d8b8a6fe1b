import type { Gs1Date } from '@/lib/calc/gs1-date'
import { type Gs1Elements, parseGs1 } from '@/lib/calc/gs1-elements'
import { isGtin } from '@/lib/calc/gtin'
import { isRefused } from '@/lib/calc/refusal'
import { StreamId } from '../facts/fact'
import { done, type Result, refused } from '../result'

/** What a label says: GS1 elements, a bare article number, a label printed here for a stream of the record, or any other text. */
export type LabelMeaning =
  | { kind: 'gs1'; elements: Gs1Elements; production: Gs1Date | null; expiry: Gs1Date | null }
  | { kind: 'article'; gtin: string }
  | { kind: 'own'; stream: StreamId }
  | { kind: 'text'; text: string }

/** `reason` is the code of the GS1 parser, such as `check_digit` or `date_month`. */
export type LabelRefusal = { code: 'label-empty' } | { code: 'label-unreadable'; reason: string; text: string }

const SEPARATOR = '\u001d'
/** A scanner says that a text is GS1 by a leading mark or a separator; a person by brackets; else it begins with an article number. */
const LOOKS_GS1 = /^(?:\](?:C1|d2|Q3|e0)|\(\d{2,4}\)|01\d{14})/
const OWN = /^(?:batch|instrument|repair):/

/**
 * Read the text of a label, scanned or keyed. Two-digit years are read beside `referenceYear`.
 * Refuses `label-empty`, and `label-unreadable` with what the GS1 parser refuses; no other text is refused.
 * @source GS1 General Specifications sections 3 and 7, see `parseGs1`
 */
export function readLabel(scanned: string, referenceYear: number): Result<LabelMeaning, LabelRefusal> {
  const text = scanned.trim()
  if (text === '') return refused({ code: 'label-empty' })
  if (LOOKS_GS1.test(text) || text.includes(SEPARATOR)) {
    const read = parseGs1({ text, referenceYear, identifiers: 'label' })
    return isRefused(read)
      ? refused({ code: 'label-unreadable', reason: read.refused, text })
      : done({ kind: 'gs1', ...read })
  }
  if (OWN.test(text)) {
    const stream = StreamId.safeParse(text)
    if (stream.success) return done({ kind: 'own', stream: stream.data })
  }
  return done(isGtin(text) ? { kind: 'article', gtin: text.padStart(14, '0') } : { kind: 'text', text })
}
