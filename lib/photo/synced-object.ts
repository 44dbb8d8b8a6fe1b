import { createHash } from 'node:crypto'
import { createReadStream } from 'node:fs'
import { type FileHandle, open, rename, unlink } from 'node:fs/promises'
import type { PhotoSource } from '@/lib/photo/photo-store'

/**
 * Write the source to `temporaryPath`, sync it and rename it to `finalPath`, so that a power cut leaves the whole object or
 * none under its name. Both folders exist and lie in one file system; the caller syncs them.
 * @param expectedSha256 checked while writing; null where the caller has just taken the digest of these very bytes
 * @throws RangeError when the source is not the bytes of `expectedSha256`; nothing is left behind
 * @throws Error when the disk refuses; nothing is left behind
 */
export async function writeSyncedObject(object: {
  expectedSha256: string | null
  source: PhotoSource
  temporaryPath: string
  finalPath: string
}): Promise<void> {
  const { expectedSha256, source, temporaryPath, finalPath } = object
  const hash = expectedSha256 === null ? null : createHash('sha256')
  try {
    const file = await open(temporaryPath, 'wx', 0o644)
    try {
      for await (const chunk of source instanceof Uint8Array ? [source] : createReadStream(source.path)) {
        hash?.update(chunk)
        await writeWhole(file, chunk)
      }
      const written = hash?.digest('hex') ?? null
      if (written !== expectedSha256)
        throw new RangeError(`The bytes to store are those of ${written}, not of ${expectedSha256}`)
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

/** In one call where the system takes all at once; a whole-file write would come back to the event loop every half megabyte. */
async function writeWhole(file: FileHandle, chunk: Uint8Array): Promise<void> {
  for (let at = 0; at < chunk.length; ) at += (await file.write(chunk, at)).bytesWritten
}
