import { sha256 } from '@noble/hashes/sha2.js'
import type { Hasher } from './byte-source'

/** A hasher that runs anywhere; whole byte strings go to WebCrypto where it is there. */
export const nobleHasher: Hasher = {
  stream() {
    const hash = sha256.create()
    return {
      update(bytes) {
        hash.update(bytes)
      },
      digest: () => hash.digest(),
    }
  },
  async digest(bytes) {
    const subtle = globalThis.crypto?.subtle
    if (!subtle) return sha256(bytes)
    return new Uint8Array(await subtle.digest('SHA-256', new Uint8Array(bytes)))
  },
}
