import { createHash, webcrypto } from 'node:crypto'
import { open } from 'node:fs/promises'
import type { ByteSource, Hasher } from '@/lib/verify/byte-source'

/** A file on disk as a source of bytes, open until closed. @throws what the system says when it cannot be opened or is no plain file */
export async function openFileSource(path: string): Promise<ByteSource & { close(): Promise<void> }> {
  const file = await open(path, 'r')
  const { size, isFile } = await file.stat().then((stat) => ({ size: stat.size, isFile: stat.isFile() }))
  if (!isFile) {
    await file.close()
    throw Object.assign(new Error('no plain file'), { code: 'EISDIR' })
  }
  return {
    sizeBytes: size,
    async read(offset, length) {
      const bytes = Buffer.allocUnsafeSlow(length)
      let filled = 0
      while (filled < length) {
        const { bytesRead } = await file.read(bytes, filled, length - filled, offset + filled)
        if (bytesRead === 0) throw new Error('The file became shorter while it was read.')
        filled += bytesRead
      }
      return new Uint8Array(bytes.buffer, bytes.byteOffset, length)
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
