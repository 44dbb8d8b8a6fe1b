import { createHash } from 'node:crypto'

/** Bytes to be stored, or a file on this machine to be copied in. */
export type PhotoSource = Uint8Array | { readonly path: string }

/**
 * A place for photo bytes, each object named by the SHA-256 of its bytes (64 lower-case hex digits).
 * An object once stored is never overwritten.
 */
export interface PhotoStore {
  /**
   * Store the source under its known digest; durable when the promise settles. Storing the same bytes again changes nothing.
   * @throws RangeError when the digest is malformed or is not the source's digest
   * @throws Error when the object already stored under this name is not what its name says, or when the store is lost
   */
  put(sha256: string, source: PhotoSource): Promise<void>
  /** The stored bytes, unchecked; null when nothing is stored under this name or the name is no digest. */
  read(sha256: string): Promise<Uint8Array | null>
  /** Whether an object of this name is stored; false for a name that is no digest. */
  has(sha256: string): Promise<boolean>
  /**
   * Store bytes and give their SHA-256, for stores that can spare the second digest `put` checks by.
   * @throws Error as `put` does
   */
  add?(bytes: Uint8Array): Promise<string>
  /**
   * Where a stored object lies on this machine, for stores that are a folder.
   * @throws RangeError when the digest is malformed
   */
  path?(sha256: string): string
}

/** Whether a text is a SHA-256 in the only spelling a store accepts: 64 lower-case hex digits. */
export function isSha256Hex(text: string): boolean {
  return /^[0-9a-f]{64}$/.test(text)
}

/**
 * Store bytes in any store and give their SHA-256; durable when the promise settles.
 * @throws Error when the store is lost or holds something else under this digest
 */
export async function addToStore(store: PhotoStore, bytes: Uint8Array): Promise<string> {
  if (store.add !== undefined) return store.add(bytes)
  const sha256 = createHash('sha256').update(bytes).digest('hex')
  await store.put(sha256, bytes)
  return sha256
}
