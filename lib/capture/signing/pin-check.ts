import { base64Of, parseBase64 } from '@/lib/evidence/base64'

const ITERATIONS = 310_000
const PIN_DIGITS_MIN = 6

/** What is kept of a PIN: never the PIN. Its few digits could be tried out by who holds the device's storage, hence the limit of tries and the ending of a lost device's key before the server. */
export type PinCheck = { salt: string; iterations: number; hash: string }

/** Whether a text may be a PIN: at least six digits, not one digit throughout. */
export function isPin(text: string): boolean {
  return new RegExp(`^\\d{${PIN_DIGITS_MIN},12}$`).test(text) && new Set(text).size > 1
}

/** What is kept of a new PIN. @throws RangeError when it is none (see `isPin`) */
export async function makePinCheck(pin: string): Promise<PinCheck> {
  if (!isPin(pin)) throw new RangeError('not a PIN')
  const salt = crypto.getRandomValues(new Uint8Array(16))
  return { salt: base64Of(salt), iterations: ITERATIONS, hash: await hashOf(pin, salt, ITERATIONS) }
}

/** Whether a PIN is the one that was set. */
export async function isPinOf(pin: string, check: PinCheck): Promise<boolean> {
  const salt = parseBase64(check.salt)
  return salt !== null && (await hashOf(pin, salt, check.iterations)) === check.hash
}

/** @source RFC 8018 (PBKDF2) with HMAC-SHA-256 */
async function hashOf(pin: string, salt: Uint8Array, iterations: number): Promise<string> {
  const key = await crypto.subtle.importKey('raw', new TextEncoder().encode(pin), 'PBKDF2', false, ['deriveBits'])
  const bits = await crypto.subtle.deriveBits(
    { name: 'PBKDF2', hash: 'SHA-256', salt: salt as BufferSource, iterations },
    key,
    256,
  )
  return base64Of(new Uint8Array(bits))
}
