import { createHash, webcrypto } from 'node:crypto'
import { open } from 'node:fs/promises'
import type { ByteSource, Hasher } from '@/lib/verify/byte-source'

const SHARED_BUFFERS = 3

/** A file on disk as a source of bytes, open until closed. @throws what the system says when it cannot be opened or is no plain file */
export async function openFileSource(path: string): Promise<ByteSource & { close(): Promise<void> }> {
  const file = await open(path, 'r')
  const { size, isFile } = await file.stat().then((stat) => ({ size: stat.size, isFile: stat.isFile() }))
  if (!isFile) {
    await file.close()
    throw Object.assign(new Error('no plain file'), { code: 'EISDIR' })
  }
  const fill = async (bytes: Uint8Array, offset: number): Promise<Uint8Array> => {
    let filled = 0
    while (filled < bytes.length) {
      const { bytesRead } = await file.read(bytes, filled, bytes.length - filled, offset + filled)
      if (bytesRead === 0) throw new Error('The file became shorter while it was read.')
      filled += bytesRead
    }
    return bytes
  }
  const buffers: Uint8Array[] = []
  let turn = 0
  return {
    sizeBytes: size,
    read: (offset, length) => fill(new Uint8Array(length), offset),
    readShared(offset, length) {
      turn = (turn + 1) % SHARED_BUFFERS
      const held = buffers[turn]
      const own = held && held.length >= length ? held : new Uint8Array(Math.ceil(length * 1.25))
      buffers[turn] = own
      return fill(own.subarray(0, length), offset)
    },
    close: () => file.close(),
  }
}

/** SHA-256 of the system: streams at once, whole byte strings beside them on another core. */
export const nodeHasher: Hasher = {
  stream() {
    const hash = createHash('sha256')
    return {
      update(bytes) {
        hash.update(bytes)
      },
      digest: () => new Uint8Array(hash.digest()),
    }
  },
  async digest(bytes) {
    return new Uint8Array(await webcrypto.subtle.digest('SHA-256', bytes as Uint8Array<ArrayBuffer>))
  },
}
