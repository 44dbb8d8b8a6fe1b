import { done, type Result, refused } from '@/lib/domain/result'
import { base64Of, parseBase64 } from './base64'
import { digestOf, hexOf } from './digest'

/** Algorithm byte of Ed25519 in keys and key ids. @source C2SP signed-note */
export const ED25519 = 0x01
const PUBLIC_KEY_BYTES = 32

/** A key that checks signatures: its name, the 8 hex digits of its id, 32 bytes of Ed25519, and the line they are written as. */
export type Vkey = { name: string; keyId: string; publicKey: Uint8Array; text: string }

/** The 4-byte id of a key as 8 hex digits: start of SHA-256(name || 0A || 01 || public key). @source C2SP signed-note */
export function keyIdOf(name: string, publicKey: Uint8Array): string {
  const named = new TextEncoder().encode(`${name}\n`)
  const bytes = new Uint8Array(named.length + 1 + publicKey.length)
  bytes.set(named)
  bytes[named.length] = ED25519
  bytes.set(publicKey, named.length + 1)
  return hexOf(digestOf(bytes)).slice(0, 8)
}

/** The key of a name and 32 bytes. @throws RangeError when the name is empty or has a space or plus sign, or the key another length */
export function makeVkey(name: string, publicKey: Uint8Array): Vkey {
  if (!/^[^\s+]+$/.test(name))
    throw new RangeError(`Expected a key name without spaces or plus signs, received ${name}`)
  if (publicKey.length !== PUBLIC_KEY_BYTES)
    throw new RangeError(`Expected a key of 32 bytes, received ${publicKey.length}`)
  const keyId = keyIdOf(name, publicKey)
  return { name, keyId, publicKey, text: `${name}+${keyId}+${base64Of(Uint8Array.of(ED25519, ...publicKey))}` }
}

/**
 * Parse a key line, `<name>+<key id>+<base64>`, without line break. Refuses `vkey-malformed` with what is wrong: `form`, `base64`,
 * `algorithm` (only Ed25519), or `key-id` when the id is not that of name and key.
 */
export function parseVkey(
  text: string,
): Result<Vkey, { code: 'vkey-malformed'; problem: 'form' | 'base64' | 'algorithm' | 'key-id' }> {
  const wrong = (problem: 'form' | 'base64' | 'algorithm' | 'key-id') =>
    refused({ code: 'vkey-malformed', problem } as const)
  const [, name, keyId, encoded] = text.length <= 400 ? (/^([^\s+]+)\+([0-9a-f]{8})\+([^\s]+)$/.exec(text) ?? []) : []
  if (!name || !keyId || !encoded) return wrong('form')
  const bytes = parseBase64(encoded)
  if (!bytes) return wrong('base64')
  if (bytes[0] !== ED25519 || bytes.length !== 1 + PUBLIC_KEY_BYTES) return wrong('algorithm')
  const vkey = makeVkey(name, bytes.slice(1))
  return vkey.keyId === keyId ? done(vkey) : wrong('key-id')
}
