import canonicalize from 'canonicalize'
import { done, type Result, refused } from '@/lib/domain/result'

const DEPTH_AT_MOST = 60

export type CanonicalFault = { code: 'not-utf8' | 'not-json' | 'too-deep' | 'not-canonical' }

/**
 * The value of canonical JSON bytes (RFC 8785) from outside. Refuses `not-utf8`, `too-deep` (over 60 levels), `not-json`, and `not-canonical` when
 * writing the value again gives other bytes: other order, spaces, doubled members, numbers in another spelling.
 */
export function parseCanonical(bytes: Uint8Array): Result<unknown, CanonicalFault> {
  let text: string
  try {
    text = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes)
  } catch {
    return refused({ code: 'not-utf8' })
  }
  if (isTooDeep(text)) return refused({ code: 'too-deep' })
  let value: unknown
  try {
    value = JSON.parse(text)
  } catch {
    return refused({ code: 'not-json' })
  }
  return isWrittenSo(value, text) ? done(value) : refused({ code: 'not-canonical' })
}

function isWrittenSo(value: unknown, text: string): boolean {
  try {
    return canonicalize(value) === text
  } catch {
    // A lone surrogate has no canonical form.
    return false
  }
}

/** Counts brackets outside strings: nothing recurses over hostile text before this. */
function isTooDeep(text: string): boolean {
  let depth = 0
  let isInString = false
  for (let at = 0; at < text.length; at += 1) {
    const character = text[at]
    if (isInString) {
      if (character === '\\') at += 1
      else if (character === '"') isInString = false
    } else if (character === '"') isInString = true
    else if (character === '[' || character === '{') {
      depth += 1
      if (depth > DEPTH_AT_MOST) return true
    } else if (character === ']' || character === '}') depth -= 1
  }
  return false
}
