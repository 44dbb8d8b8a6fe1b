import { createHash } from 'node:crypto'
import { createReadStream } from 'node:fs'
import { type FileHandle, open, rename, unlink } from 'node:fs/promises'
import type { PhotoSource } from '@/lib/photo/photo-store'

/**
 * Write the source to `temporaryPath`, check its digest, sync it and rename it to `finalPath`, so that a power cut
 * leaves the whole object or none under its name. Both folders exist and lie in one file system; the caller syncs them.
 * @throws RangeError when the source is not the bytes of `sha256`; nothing is left behind
 * @throws Error when the disk refuses; nothing is left behind
 */
export async function writeSyncedObject(object: {
  sha256: string
  source: PhotoSource
  temporaryPath: string
  finalPath: string
}): Promise<void> {
  const { sha256, source, temporaryPath, finalPath } = object
  try {
    const file = await open(temporaryPath, 'wx', 0o644)
    try {
      const written = await copyInto(file, source)
      if (written !== sha256) throw new RangeError(`The bytes to store are those of ${written}, not of ${sha256}`)
      await file.sync()
    } finally {
      await file.close()
    }
    await rename(temporaryPath, finalPath)
  } catch (error) {
    await unlink(temporaryPath).catch(() => undefined)
    throw error
  }
}

async function copyInto(file: FileHandle, source: PhotoSource): Promise<string> {
  const hash = createHash('sha256')
  for await (const chunk of source instanceof Uint8Array ? [source] : createReadStream(source.path)) {
    hash.update(chunk)
    await writeWhole(file, chunk)
  }
  return hash.digest('hex')
}

/** In one call where the system takes all at once; a whole-file write would come back to the event loop every half megabyte. */
async function writeWhole(file: FileHandle, chunk: Uint8Array): Promise<void> {
  for (let at = 0; at < chunk.length; ) at += (await file.write(chunk, at)).bytesWritten
}
