import { defaulted, oneOf, optional, text, whole } from '@/lib/calc/argument'
import { formula } from '@/lib/calc/formula'
import { type Gs1Date, gs1Date } from '@/lib/calc/gs1-date'
import { type ApplicationIdentifier, GS1_FIELDS, type Gs1Field } from '@/lib/calc/gs1-identifiers'
import { isGtin } from '@/lib/calc/gtin'
import { isRefused, type Refusal, refuse } from '@/lib/calc/refusal'

export type Gs1Elements = Partial<Record<ApplicationIdentifier, string>>

const SEPARATOR = '\u001d'
/** GS1 character set 82: the invariant part of ISO 646 without space and a few signs. */
const SET_82 = /^[!"%&'()*+,\-./0-9:;<=>?A-Z_a-z]+$/

function withoutLeadingSeparators(scanned: string): string {
  let start = 0
  while (scanned[start] === SEPARATOR) start += 1
  return scanned.slice(start)
}

type Pair = readonly [ai: ApplicationIdentifier, value: string]
type Fields = readonly Gs1Field[]
type Part = readonly [field: Gs1Field | undefined, value: string]

function checkedPair([field, value]: Part): Pair | Refusal {
  if (field === undefined) return refuse('unknown_ai')
  const { ai, digits, most } = field
  if (value === '') return refuse(`empty_${ai}`)
  if (value.length > most || value.length < (digits ?? 1)) return refuse(`length_${ai}`)
  if (!(digits === null ? SET_82 : /^\d+$/).test(value)) return refuse(`characters_${ai}`)
  return ai === '01' && !isGtin(value) ? refuse('check_digit') : [ai, value]
}

/** Text for people: each identifier in brackets. A bracket in a value stays unless it holds two to four digits. */
function splitBracketed(written: string, fields: Fields): Part[] {
  const marks = [...written.matchAll(/\(\d{2,4}\)/g)]
  return marks.map((mark, index) => [
    fields.find(({ ai }) => mark[0] === `(${ai})`),
    written.slice(mark.index + mark[0].length, marks[index + 1]?.index),
  ])
}

/** Scanned text: fixed fields by length, variable fields up to the separator or the end. */
function splitScanned(scanned: string, fields: Fields): Part[] {
  const parts: Part[] = []
  let rest = scanned
  while (rest !== '') {
    const field = fields.find(({ ai }) => rest.startsWith(ai))
    if (field === undefined) return [...parts, [field, rest]]
    const start = field.ai.length
    const separatorAt = rest.indexOf(SEPARATOR, start)
    const untilSeparator = separatorAt < 0 ? rest.length : separatorAt
    const end = Math.min(start + (field.digits ?? rest.length), untilSeparator)
    parts.push([field, rest.slice(start, end)])
    rest = withoutLeadingSeparators(rest.slice(end))
  }
  return parts
}

function collect(parts: readonly Part[]): Gs1Elements | Refusal {
  const elements: Gs1Elements = {}
  for (const part of parts) {
    const pair = checkedPair(part)
    if (isRefused(pair)) return pair
    const known = elements[pair[0]]
    if (known !== undefined && known !== pair[1]) return refuse('conflicting_ai')
    elements[pair[0]] = pair[1]
  }
  return elements
}

function dateOf(value: string | undefined, ai: '11' | '17', referenceYear: number | null): Gs1Date | null | Refusal {
  return value === undefined ? null : gs1Date({ value, ai, referenceYear })
}

/**
 * Read a GS1 text, scanned (a leading ]C1 ]d2 ]Q3 ]e0 or 0x1D is dropped) or with bracketed identifiers. The reference year is
 * needed once a date is present. `identifiers` names the set that is read: `reference` (01, 10, 11, 17, 21) unless `label` is
 * asked for, which also reads 240, 310n and 8004. A lost separator cannot be seen unless the field grows beyond 20: check the batch by eye.
 * Refuses `unknown_ai`, `empty_AI`, `length_AI`, `characters_AI`, `check_digit`, `conflicting_ai`, `expiry_before_production`,
 * and what {@link gs1Date} refuses.
 * @source GS1 General Specifications sections 3 and 7. Confidence high; day 00 of AI 11 medium.
 */
export const parseGs1 = formula(
  {
    text: text('text'),
    referenceYear: optional(whole('ref_year', 1)),
    identifiers: defaulted(oneOf('identifiers', ['reference', 'label']), 'reference'),
  },
  ({ text: written, referenceYear, identifiers }) => {
    const body = withoutLeadingSeparators(written.replace(/^\](?:C1|d2|Q3|e0)/, ''))
    if (body === '') return refuse('missing_text')
    const split = /^\(\d{2,4}\)/.test(body) ? splitBracketed : splitScanned
    const elements = collect(split(body, GS1_FIELDS[identifiers]))
    if (isRefused(elements)) return elements
    const production = dateOf(elements['11'], '11', referenceYear)
    if (isRefused(production)) return production
    const expiry = dateOf(elements['17'], '17', referenceYear)
    if (isRefused(expiry)) return expiry
    if (production !== null && expiry !== null && expiry.date < production.date)
      return refuse('expiry_before_production')
    return { elements, production, expiry }
  },
)

/** The elements that are there, in the order in which a label states them. */
function inOrder(elements: Gs1Elements): Array<readonly [Gs1Field, string]> {
  return GS1_FIELDS.label.flatMap((field) => {
    const value = elements[field.ai]
    return value === undefined ? [] : [[field, value] as const]
  })
}

/**
 * Write elements as a scanned text, with a separator after a variable field that is not the last.
 * The inverse of {@link parseGs1} for elements that it accepts.
 */
export function writeGs1(elements: Gs1Elements): string {
  const fields = inOrder(elements)
  return fields
    .map(([{ ai, digits }, value], index) => {
      return `${ai}${value}${digits === null && index < fields.length - 1 ? SEPARATOR : ''}`
    })
    .join('')
}

/** The elements as text for people, each identifier in brackets: `(01)07358120046275(10)R-4711`. */
export function showGs1(elements: Gs1Elements): string {
  return inOrder(elements)
    .map(([{ ai }, value]) => `(${ai})${value}`)
    .join('')
}

/** The elements as a writer of symbols takes them: in square brackets, which no value can hold. */
export function symbolTextOf(elements: Gs1Elements): string {
  return inOrder(elements)
    .map(([{ ai }, value]) => `[${ai}]${value}`)
    .join('')
}
