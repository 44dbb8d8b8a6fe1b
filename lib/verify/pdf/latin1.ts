/** Bytes as characters of the same number. */
export function latin1(bytes: Uint8Array): string {
  let text = ''
  for (const byte of bytes) text += String.fromCharCode(byte)
  return text
}

const KEPT_AT_MOST = 4000
const kept = new Map<number, string>()

/** The characters of a stretch of bytes; those of frequent stretches are made once. */
export function keptText(bytes: Uint8Array, from: number, to: number): string {
  let sum = to - from
  for (let at = from; at < to; at += 1) sum = (Math.imul(sum, 31) + (bytes[at] ?? 0)) | 0
  const known = kept.get(sum)
  if (known !== undefined && isText(bytes, from, to, known)) return known
  const text = latin1(bytes.subarray(from, to))
  if (kept.size < KEPT_AT_MOST) kept.set(sum, text)
  return text
}

function isText(bytes: Uint8Array, from: number, to: number, text: string): boolean {
  if (text.length !== to - from) return false
  for (let at = from; at < to; at += 1) if (bytes[at] !== text.charCodeAt(at - from)) return false
  return true
}
