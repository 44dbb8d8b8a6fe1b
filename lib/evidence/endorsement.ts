import { base64Of, parseBase64 } from './base64'
import { isSignedBy, type LogKey, signWith } from './log-key'
import type { Vkey } from './vkey'

/** Bytes that a log key signs to name the key after it (FORMAT.md section 4). */
export function endorsementBytes(newVkey: string): Uint8Array {
  return new TextEncoder().encode(`underwrap log key\n${newVkey}\n`)
}

/** The former key's signature over its successor, in base64. */
export function endorse(former: LogKey, newVkey: string): string {
  return base64Of(signWith(former, endorsementBytes(newVkey)))
}

/** Whether an endorsement is the former key's over this successor. */
export function verifyEndorsement(former: Vkey, newVkey: string, endorsement: string): boolean {
  const signature = parseBase64(endorsement)
  return signature !== null && isSignedBy(former, endorsementBytes(newVkey), signature)
}
