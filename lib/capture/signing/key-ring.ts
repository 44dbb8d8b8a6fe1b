import { type DBSchema, type IDBPDatabase, openDB } from 'idb'
import type { FactId, PersonId } from '@/lib/domain/facts/fact'
import { done, type Result, refused } from '@/lib/domain/result'
import { isPinOf, makePinCheck, type PinCheck } from './pin-check'

const NAME = 'underwrap-signing'
/** After so many wrong PINs in a row the key is destroyed. */
export const TRIES = 5

/** One person's key on this device. */
export type KeptKey = {
  tenant: string
  person: PersonId
  name: string
  /** The fact that registered it. */
  fact: FactId
  privateKey: CryptoKey
  pin: PinCheck
  triesLeft: number
}

export type KeyRefusal = { code: 'key-not-here' } | { code: 'pin-wrong'; triesLeft: number } | { code: 'key-destroyed' }

interface Shape extends DBSchema {
  keys: { key: [string, string]; value: KeptKey }
}

/** Keys of this device, each behind its person's PIN. */
export interface KeyRing {
  /** Who may sign here, by name. */
  signers(tenant: string): Promise<Pick<KeptKey, 'person' | 'name' | 'fact' | 'triesLeft'>[]>
  /** Keep a key that the server took, in the place of an older one of that person. */
  keep(key: Omit<KeptKey, 'pin' | 'triesLeft'>, pin: string): Promise<void>
  /** A person's key once the PIN is right. A try is counted before it is looked at; the last wrong one destroys the key. Refuses `key-not-here`, `pin-wrong`, `key-destroyed`. */
  unlock(tenant: string, person: string, pin: string): Promise<Result<KeptKey, KeyRefusal>>
  drop(tenant: string, person: string): Promise<void>
  close(): void
}

/** Open the keys of this device; null where the browser gives no storage or no keys: in a private window, or on an address that is not secure. */
export async function openKeyRing(name = NAME): Promise<KeyRing | null> {
  if (typeof indexedDB === 'undefined' || !globalThis.crypto?.subtle) return null
  try {
    return ringOver(
      await openDB<Shape>(name, 1, {
        upgrade(fresh) {
          fresh.createObjectStore('keys')
        },
        blocking: (_now, _next, event) => (event.target as IDBDatabase).close(),
      }),
    )
  } catch (cause) {
    if (cause instanceof DOMException) return null
    throw cause
  }
}

function ringOver(db: IDBPDatabase<Shape>): KeyRing {
  return {
    async signers(tenant) {
      const keys = await db.getAll('keys', IDBKeyRange.bound([tenant], [tenant, []]))
      return keys
        .map(({ person, name, fact, triesLeft }) => ({ person, name, fact, triesLeft }))
        .sort((a, b) => a.name.localeCompare(b.name))
    },
    async keep(key, pin) {
      await db.put('keys', { ...key, pin: await makePinCheck(pin), triesLeft: TRIES }, [key.tenant, key.person])
    },
    async unlock(tenant, person, pin) {
      const id: [string, string] = [tenant, person]
      const tx = db.transaction('keys', 'readwrite')
      const found = await tx.store.get(id)
      if (found) await tx.store.put({ ...found, triesLeft: found.triesLeft - 1 }, id)
      await tx.done
      if (!found) return refused({ code: 'key-not-here' })
      if (found.triesLeft <= 0) {
        await db.delete('keys', id)
        return refused({ code: 'key-destroyed' })
      }
      if (await isPinOf(pin, found.pin)) {
        await db.put('keys', { ...found, triesLeft: TRIES }, id)
        return done({ ...found, triesLeft: TRIES })
      }
      if (found.triesLeft > 1) return refused({ code: 'pin-wrong', triesLeft: found.triesLeft - 1 })
      await db.delete('keys', id)
      return refused({ code: 'key-destroyed' })
    },
    drop: (tenant, person) => db.delete('keys', [tenant, person]),
    close: () => db.close(),
  }
}
