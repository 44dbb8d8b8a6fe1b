import { gtinCheckDigit } from '@/lib/calc/gtin'
import { isRefused } from '@/lib/calc/refusal'
import type { LabelRefusal } from '@/lib/domain/labels/read-label'

const NAMES: Readonly<Record<string, string>> = {
  '01': 'article number (01)',
  '10': 'batch number (10)',
  '11': 'production date (11)',
  '17': 'use-by date (17)',
  '21': 'serial number (21)',
  '240': 'maker’s product number (240)',
  '8004': 'asset number (8004)',
}
const LENGTHS: Readonly<Record<string, string>> = {
  '01': 'exactly 14 digits',
  '10': 'at most 20 signs',
  '11': 'exactly six digits, year month day',
  '17': 'exactly six digits, year month day',
  '21': 'at most 20 signs',
  '240': 'at most 30 signs',
  '8004': 'at most 30 signs',
}
const nameOf = (ai: string) => NAMES[ai] ?? `field (${ai})`
const BY_HAND = 'If it stays so, key what the label says by hand.'

/** What is wrong with a label, where, and what to do. */
export function labelFault(refusal: LabelRefusal): { title: string; todo: string } {
  if (refusal.code === 'label-empty') return { title: 'There is no text.', todo: 'Scan the label or key its text.' }
  const { reason, text } = refusal
  const [, kind, ai] = /^(empty|length|characters)_(\d+)$/.exec(reason) ?? []
  if (kind === 'empty') return { title: `The ${nameOf(ai ?? '')} is empty.`, todo: `Scan once more. ${BY_HAND}` }
  if (kind === 'length')
    return {
      title: `The ${nameOf(ai ?? '')} has the wrong length: it is ${LENGTHS[ai ?? ''] ?? 'exactly six digits'}.`,
      todo: `Scan once more; when keyed, look for a digit too many or too few. ${BY_HAND}`,
    }
  if (kind === 'characters')
    return {
      title: `The ${nameOf(ai ?? '')} holds a sign that cannot stand there.`,
      todo: `Scan once more; when keyed, look for a letter among digits, or a space. ${BY_HAND}`,
    }
  switch (reason) {
    case 'check_digit':
      return { title: checkDigitWords(text), todo: `Compare each digit with the label and scan again. ${BY_HAND}` }
    case 'unknown_ai':
      return {
        title: 'It holds a field that is not known here, or it is no GS1 label.',
        todo: `Fields read are (01), (10), (11), (17), (21), (240), (310n) and (8004). ${BY_HAND}`,
      }
    case 'conflicting_ai':
      return {
        title: 'It states the same field twice, with two values.',
        todo: `Two labels may have been read as one: scan one alone. ${BY_HAND}`,
      }
    case 'expiry_before_production':
      return {
        title: 'Its use-by date (17) lies before its production date (11).',
        todo: 'Do not receive it by this label: ask the maker, and key what is certain.',
      }
    case 'date_month':
      return { title: 'A date (11 or 17) names a month that does not exist.', todo: `Scan once more. ${BY_HAND}` }
    case 'date_day':
      return {
        title: 'A date (11 or 17) names a day that its month does not have.',
        todo: `Scan once more. ${BY_HAND}`,
      }
    default:
      return { title: `It cannot be read: ${reason.replaceAll('_', ' ')}.`, todo: BY_HAND }
  }
}

/** The article number as it was read, and the last digit that its others ask for. */
function checkDigitWords(text: string): string {
  const digits = /(?:^|\)|[^\d])01\)?(\d{14})/.exec(text)?.[1]
  const asked = digits === undefined ? null : gtinCheckDigit({ body: digits.slice(0, -1) })
  if (digits === undefined || asked === null || isRefused(asked))
    return 'The check digit of the article number (01) does not fit its other digits.'
  return `The article number (01) reads ${digits}. Its last digit, ${digits.slice(-1)}, does not fit the others: they ask for ${asked.digit}. One digit or more is wrong.`
}
