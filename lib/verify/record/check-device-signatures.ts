import type { Fact } from '@/lib/domain/facts/fact-kinds'
import { ofKind } from '@/lib/domain/fold/order-facts'
import { isDeviceSigned } from '@/lib/evidence/is-device-signed'
import type { Ledger } from '../ledger'

/**
 * Check every signature that a device's key made: the key is registered in that device's stream by who signed or, signing in person, by who witnessed it, and the proof is the key's over the signature
 * as it stands. Breaks: `device-key-missing`, `device-signature-false`.
 * @returns how many there are
 */
export function checkDeviceSignatures(facts: readonly Fact[], ledger: Ledger): number {
  const keys = ofKind(facts, 'signing-key-taken')
  let count = 0
  for (const fact of ofKind(facts, 'signed')) {
    const { method } = fact.body
    const proof = 'proof' in method ? method.proof : undefined
    if (!proof) continue
    count += 1
    const holder = method.kind === 'in person' ? method.witness : fact.observedBy
    const key = keys.find((one) => one.id === proof.key && one.stream === `device:${fact.device.id}`)
    if (!key) ledger.broken('device-key-missing', `signature ${fact.id} in ${fact.stream}`)
    else if (key.observedBy !== holder || !isDeviceSigned(fact, key))
      ledger.broken('device-signature-false', `signature ${fact.id} in ${fact.stream}`)
  }
  return count
}
