import { v7 } from 'uuid'
import { makeDeviceKey } from '@/lib/capture/signing/device-key'
import type { KeptKey } from '@/lib/capture/signing/key-ring'
import { FactId, PersonId } from '@/lib/domain/facts/fact'
import { takeSigningKey } from '@/lib/server/commands/take-signing-key'
import { PASSWORD, type World } from './world'

/** A key that QI made and took on a device, as the device keeps it. @throws Error when it was refused */
export async function keyOfDevice(world: World, device: string): Promise<{ key: KeptKey; publicKey: string }> {
  const { privateKey, publicKey } = await makeDeviceKey()
  const fact = FactId.parse(v7())
  const taken = await takeSigningKey(await world.of('QI'), {
    stream: `device:${device}`,
    body: { algorithm: 'ECDSA P-256 SHA-256', publicKey },
    id: fact,
    signer: { by: 'password', person: 'QI', password: PASSWORD },
  })
  if (!taken.ok) throw new Error(JSON.stringify(taken.error))
  const pin = { salt: '', iterations: 1, hash: '' }
  const person = PersonId.parse('QI')
  const key = { tenant: world.store.tenant, person, name: 'Person QI', fact, privateKey, pin, triesLeft: 5 }
  return { key, publicKey }
}
