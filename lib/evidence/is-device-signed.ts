import { p256 } from '@noble/curves/nist.js'
import type { FactOf } from '@/lib/domain/facts/fact-kinds'
import { parseBase64 } from './base64'
import { deviceStatement } from './device-statement'

/**
 * Whether the proof in a signature's fact is the registered key's over its statement. Any fault of key or signature is a no; so is a signature without a device's proof.
 * @source FIPS 186-5 (ECDSA), P-256 with SHA-256; signature as r and s, 32 bytes each
 */
export function isDeviceSigned(fact: FactOf<'signed'>, key: FactOf<'signing-key-taken'>): boolean {
  const { method } = fact.body
  const proof = 'proof' in method ? method.proof : undefined
  if (!proof || proof.key !== key.id) return false
  const signature = parseBase64(proof.signature)
  const publicKey = parseBase64(key.body.publicKey)
  if (!signature || !publicKey) return false
  try {
    // browsers give either s: both are the key's own
    return p256.verify(signature, deviceStatement(fact), publicKey, { lowS: false, format: 'compact' })
  } catch {
    return false
  }
}
