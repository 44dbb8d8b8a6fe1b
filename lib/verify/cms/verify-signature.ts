import type { PublicKey } from './certificate'
import { hasParts, NotDer, readDer, TAG } from './read-der'

export type DigestName = 'SHA-256' | 'SHA-384' | 'SHA-512'

/** This place has no WebCrypto: a browser offers it on https and on the machine itself alone. */
export class NoWebCrypto extends Error {
  constructor() {
    super('Signatures cannot be checked here: the page must come by https, or be on this machine.')
  }
}

/**
 * Whether a signature over a message is the key's: RSA PKCS 1 v1.5, or ECDSA with its value as DER of exactly two numbers.
 * @throws NoWebCrypto where there is none
 */
export async function verifySignature(
  key: PublicKey,
  digest: DigestName,
  message: Uint8Array,
  signature: Uint8Array,
): Promise<boolean> {
  const subtle = globalThis.crypto?.subtle
  if (!subtle) throw new NoWebCrypto()
  const raw = key.kind === 'rsa' ? signature : rawOf(signature, key.bits / 8)
  if (raw === null || (key.kind === 'rsa' && raw.length !== Math.ceil(key.bits / 8))) return false
  const name = key.kind === 'rsa' ? 'RSASSA-PKCS1-v1_5' : 'ECDSA'
  const named =
    key.kind === 'rsa' ? { name, hash: digest } : { name, namedCurve: key.kind === 'p256' ? 'P-256' : 'P-384' }
  try {
    const imported = await subtle.importKey('spki', own(key.spki), named, false, ['verify'])
    return await subtle.verify({ name, hash: digest }, imported, own(raw), own(message))
  } catch (error) {
    // a key that is none on its curve, or of a size that the engine does not take
    if (error instanceof Error) return false
    throw error
  }
}

/** The two numbers of an ECDSA signature side by side at full width; null when the DER is not exactly these two. */
function rawOf(signature: Uint8Array, width: number): Uint8Array | null {
  try {
    const value = readDer(signature)
    if (!hasParts(value, TAG.sequence, [TAG.integer, TAG.integer])) return null
    const raw = new Uint8Array(2 * width)
    for (const [index, part] of value.parts.entries()) {
      const digits = part.content[0] === 0 ? part.content.subarray(1) : part.content
      const isNegative = (part.content[0] ?? 0) >= 0x80
      if (isNegative || digits.length > width) return null
      raw.set(digits, (index + 1) * width - digits.length)
    }
    return raw
  } catch (error) {
    if (error instanceof NotDer) return null
    throw error
  }
}

function own(bytes: Uint8Array): Uint8Array<ArrayBuffer> {
  return new Uint8Array(bytes)
}
