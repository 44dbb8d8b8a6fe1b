import { ed25519 } from '@noble/curves/ed25519.js'
import { base64Of, parseBase64 } from './base64'
import { ED25519, makeVkey, parseVkey, type Vkey } from './vkey'

/** A key that signs checkpoints. The seed (32 bytes) is secret. */
export type LogKey = { seed: Uint8Array; vkey: Vkey }

const PREFIX = 'PRIVATE+KEY+'

/** The key of a name and a seed of 32 bytes. @throws RangeError as `makeVkey` does */
export function makeLogKey(name: string, seed: Uint8Array): LogKey {
  return { seed, vkey: makeVkey(name, ed25519.getPublicKey(seed)) }
}

/** Ed25519 signature, 64 bytes. */
export function signWith(key: LogKey, message: Uint8Array): Uint8Array {
  return ed25519.sign(message, key.seed)
}

/** Whether a signature is the key's over the message. Any fault of key or signature is a no. @source RFC 8032, strict */
export function isSignedBy(vkey: Vkey, message: Uint8Array, signature: Uint8Array): boolean {
  if (signature.length !== 64) return false
  try {
    return ed25519.verify(signature, message, vkey.publicKey, { zip215: false })
  } catch {
    return false
  }
}

/** The secret key as one line of a file: `PRIVATE+KEY+<name>+<key id>+<base64 of 01 || seed>`. */
export function writePrivateKey({ seed, vkey }: LogKey): string {
  return `${PREFIX}${vkey.name}+${vkey.keyId}+${base64Of(Uint8Array.of(ED25519, ...seed))}`
}

/** The key of such a line; null when it is none or its id is not its own. */
export function parsePrivateKey(text: string): LogKey | null {
  if (!text.startsWith(PREFIX)) return null
  const [, name, keyId, encoded] = /^([^\s+]+)\+([0-9a-f]{8})\+([^\s]+)$/.exec(text.slice(PREFIX.length)) ?? []
  const bytes = encoded ? parseBase64(encoded) : null
  if (!name || !bytes || bytes.length !== 33 || bytes[0] !== ED25519) return null
  const key = makeLogKey(name, bytes.slice(1))
  return key.vkey.keyId === keyId && parseVkey(key.vkey.text).ok ? key : null
}
