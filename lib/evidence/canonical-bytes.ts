import canonicalize from 'canonicalize'

/**
 * Canonical JSON of a value (RFC 8785) in UTF-8: the same value gives the same bytes everywhere.
 * @throws TypeError when the value has no JSON form
 */
export function canonicalBytes(value: unknown): Uint8Array {
  const text = canonicalize(value)
  if (text === undefined) throw new TypeError('Expected a value with a JSON form')
  return new TextEncoder().encode(text)
}
