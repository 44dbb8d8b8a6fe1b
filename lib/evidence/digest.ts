import { sha256 } from '@noble/hashes/sha2.js'
import { Sha256 } from '@/lib/domain/facts/fact'

/** SHA-256 of bytes as 32 bytes; runs in Node and in a browser. */
export function digestOf(bytes: Uint8Array): Uint8Array {
  return sha256(bytes)
}

/** Bytes as lower-case hex. */
export function hexOf(bytes: Uint8Array): string {
  let text = ''
  for (const byte of bytes) text += byte.toString(16).padStart(2, '0')
  return text
}

/** SHA-256 of bytes as facts and leaves write it: lower-case hex. */
export function hexDigestOf(bytes: Uint8Array): Sha256 {
  return Sha256.parse(hexOf(sha256(bytes)))
}
