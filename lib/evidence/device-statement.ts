import type { FactOf } from '@/lib/domain/facts/fact-kinds'
import { canonicalBytes } from './canonical-bytes'

/** First line of what a device's key signs, so that its signature means nothing elsewhere. */
const HEADING = 'underwrap device signature 1\n'

/**
 * The bytes that a device's key signs: the heading, then the canonical JSON of the signature's fact without the key's own signature in it. So it covers who signs, as what, when, on which device,
 * and the digest of every fact and photo signed.
 * @throws RangeError when the fact has no device's proof
 */
export function deviceStatement(fact: FactOf<'signed'>): Uint8Array {
  const { method } = fact.body
  const proof = 'proof' in method ? method.proof : undefined
  if (!proof) throw new RangeError('the signature was not made with a device’s key')
  const { signature: _signature, ...stated } = proof
  const json = canonicalBytes({ ...fact, body: { ...fact.body, method: { ...method, proof: stated } } })
  const heading = new TextEncoder().encode(HEADING)
  const bytes = new Uint8Array(heading.length + json.length)
  bytes.set(heading)
  bytes.set(json, heading.length)
  return bytes
}
