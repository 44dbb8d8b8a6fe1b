import { optional, text, whole } from '@/lib/calc/argument'
import { formula } from '@/lib/calc/formula'
import { type Gs1Date, gs1Date } from '@/lib/calc/gs1-date'
import { isGtin } from '@/lib/calc/gtin'
import { isRefused, type Refusal, refuse } from '@/lib/calc/refusal'

/** Application identifiers read here: GTIN, batch, production date, expiry date, serial number. */
export type ApplicationIdentifier = '01' | '10' | '11' | '17' | '21'
export type Gs1Elements = Partial<Record<ApplicationIdentifier, string>>

const SEPARATOR = '\u001d'
const FIXED_LENGTH: Readonly<Record<ApplicationIdentifier, number | null>> = {
  '01': 14,
  '10': null,
  '11': 6,
  '17': 6,
  '21': null,
}
const VARIABLE_LIMIT = 20
/** GS1 character set 82: the invariant part of ISO 646 without space and a few signs. */
const SET_82 = /^[!"%&'()*+,\-./0-9:;<=>?A-Z_a-z]+$/

const isKnown = (ai: string): ai is ApplicationIdentifier => Object.hasOwn(FIXED_LENGTH, ai)

function withoutLeadingSeparators(scanned: string): string {
  let start = 0
  while (scanned[start] === SEPARATOR) start += 1
  return scanned.slice(start)
}

type Pair = readonly [ai: ApplicationIdentifier, value: string]

function checkedPair(ai: string, value: string): Pair | Refusal {
  if (!isKnown(ai)) return refuse('unknown_ai')
  const length = FIXED_LENGTH[ai]
  if (value === '') return refuse(`empty_${ai}`)
  if (length === null ? value.length > VARIABLE_LIMIT : value.length !== length) return refuse(`length_${ai}`)
  if (!(length === null ? SET_82 : /^\d+$/).test(value)) return refuse(`characters_${ai}`)
  return ai === '01' && !isGtin(value) ? refuse('check_digit') : [ai, value]
}

/** Text for people: each identifier in brackets. A bracket in a value stays unless it holds two to four digits. */
function splitBracketed(written: string): Array<readonly [string, string]> {
  const marks = [...written.matchAll(/\((\d{2,4})\)/g)]
  return marks.map((mark, index) => [
    mark[1] ?? '',
    written.slice(mark.index + mark[0].length, marks[index + 1]?.index),
  ])
}

/** Scanned text: fixed fields by length, variable fields up to the separator or the end. */
function splitScanned(scanned: string): Array<readonly [string, string]> {
  const fields: Array<readonly [string, string]> = []
  let rest = scanned
  while (rest !== '') {
    const ai = rest.slice(0, 2)
    const length = isKnown(ai) ? FIXED_LENGTH[ai] : null
    const separatorAt = rest.indexOf(SEPARATOR, 2)
    const untilSeparator = separatorAt < 0 ? rest.length : separatorAt
    const end = length === null ? untilSeparator : Math.min(2 + length, untilSeparator)
    fields.push([ai, rest.slice(2, end)])
    rest = withoutLeadingSeparators(rest.slice(end))
  }
  return fields
}

function collect(fields: ReadonlyArray<readonly [string, string]>): Gs1Elements | Refusal {
  const elements: Gs1Elements = {}
  for (const [ai, value] of fields) {
    const pair = checkedPair(ai, value)
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
 * needed once a date is present. A lost separator cannot be seen unless the field grows beyond 20: check the batch by eye.
 * Refuses `unknown_ai`, `empty_AI`, `length_AI`, `characters_AI`, `check_digit`, `conflicting_ai`, `expiry_before_production`,
 * and what {@link gs1Date} refuses.
 * @source GS1 General Specifications sections 3 and 7. Confidence high; day 00 of AI 11 medium.
 */
export const parseGs1 = formula(
  { text: text('text'), referenceYear: optional(whole('ref_year', 1)) },
  ({ text: written, referenceYear }) => {
    const body = withoutLeadingSeparators(written.replace(/^\](?:C1|d2|Q3|e0)/, ''))
    if (body === '') return refuse('missing_text')
    const elements = collect(/^\(\d{2,4}\)/.test(body) ? splitBracketed(body) : splitScanned(body))
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

/**
 * Write elements as a scanned text, with a separator after a variable field that is not the last.
 * The inverse of {@link parseGs1} for elements that it accepts.
 */
export function writeGs1(elements: Gs1Elements): string {
  const fields = Object.entries(elements)
  return fields
    .map(([ai, value], index) => {
      const isVariable = isKnown(ai) && FIXED_LENGTH[ai] === null
      return `${ai}${value}${isVariable && index < fields.length - 1 ? SEPARATOR : ''}`
    })
    .join('')
}
