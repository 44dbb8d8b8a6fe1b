import { open } from 'node:fs/promises'

/** Reads photo bytes by digest. A store that is a folder says where an object lies: it is then read without holding more than a few photos. */
export type PhotoBytes = {
  read(sha256: string): Promise<Uint8Array | null>
  has(sha256: string): Promise<boolean>
  path?(sha256: string): string
}

const BUFFERS = 3

/**
 * A reader that takes turns with three buffers where the store is a folder: bytes stay good until the third read after. Null when nothing is stored.
 */
export function createPhotoReader(store: PhotoBytes): (sha256: string) => Promise<Uint8Array | null> {
  const buffers: Buffer[] = Array.from({ length: BUFFERS }, () => Buffer.alloc(0))
  let turn = 0
  return async (sha256) => {
    if (!store.path) return store.read(sha256)
    turn = (turn + 1) % BUFFERS
    const file = await open(store.path(sha256)).catch(nullWhenAbsent)
    if (!file) return null
    try {
      const { size } = await file.stat()
      const own = buffers[turn]
      const buffer = own && own.length >= size ? own : Buffer.allocUnsafeSlow(Math.ceil(size * 1.25))
      buffers[turn] = buffer
      let filled = 0
      while (filled < size) {
        const { bytesRead } = await file.read(buffer, filled, size - filled, filled)
        if (bytesRead === 0) break
        filled += bytesRead
      }
      return buffer.subarray(0, filled)
    } finally {
      await file.close()
    }
  }
}

function nullWhenAbsent(error: NodeJS.ErrnoException): null {
  if (error.code === 'ENOENT' || error.code === 'ENOTDIR') return null
  throw error
}
