import canonicalize from 'canonicalize'
import { isRefused, type Refusal } from '@/lib/calc/refusal'
import { type JsonValue, parseStrictJson } from '@/lib/calc/strict-json'

/**
 * Canonical text of a JSON value: keys by UTF-16 code units, ECMAScript shortest numbers, -0 as 0, no normalisation.
 * @throws when the value breaks I-JSON (lone surrogate, NaN, Infinity): the caller skipped `parseStrictJson`.
 * @source RFC 8785. Confidence high.
 */
export function writeCanonicalJson(value: JsonValue): string {
  const text = canonicalize(value)
  if (text === undefined) throw new TypeError('a JSON value always has a canonical text')
  return text
}

/**
 * Canonical text of a JSON text. Refuses `not_json`, `duplicate_key`, `lone_surrogate`, `integer_too_large`.
 * @source RFC 8785, RFC 7493. Confidence high.
 */
export function canonicalJson(text: string): { readonly text: string } | Refusal {
  const parsed = parseStrictJson(text)
  return isRefused(parsed) ? parsed : { text: writeCanonicalJson(parsed.value) }
}
