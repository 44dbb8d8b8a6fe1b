import { createHash } from 'node:crypto'
import { createReadStream } from 'node:fs'
import { type FileHandle, mkdir, open, rename, unlink } from 'node:fs/promises'
import { dirname } from 'node:path'
import type { PhotoSource } from '@/lib/photo/photo-store'

/**
 * Write the source to `temporaryPath`, check its digest, sync it, rename it to `finalPath` and sync the folders from there
 * up to `root`, so that a power cut leaves the whole object or none. All paths lie in one file system.
 * @throws RangeError when the source is not the bytes of `sha256`; nothing is left behind
 * @throws Error when the disk refuses
 */
export async function writeSyncedObject(object: {
  sha256: string
  source: PhotoSource
  temporaryPath: string
  finalPath: string
  root: string
}): Promise<void> {
  const { sha256, source, temporaryPath, finalPath, root } = object
  const firstMade = await mkdir(dirname(finalPath), { recursive: true })
  await mkdir(dirname(temporaryPath), { recursive: true })
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
  await Promise.all(
    foldersUpTo(firstMade !== undefined && firstMade.length <= root.length ? dirname(firstMade) : root, finalPath).map(
      syncFolder,
    ),
  )
}

async function copyInto(file: FileHandle, source: PhotoSource): Promise<string> {
  const hash = createHash('sha256')
  for await (const chunk of source instanceof Uint8Array ? [source] : createReadStream(source.path)) {
    hash.update(chunk)
    await file.writeFile(chunk)
  }
  return hash.digest('hex')
}

/** Another writer may have made a folder and not yet synced its parent, so every folder is synced each time. */
function foldersUpTo(top: string, path: string): string[] {
  const folders: string[] = []
  for (let folder = dirname(path); folder.length >= top.length; folder = dirname(folder)) {
    folders.push(folder)
    if (folder === dirname(folder)) break
  }
  return folders
}

async function syncFolder(path: string): Promise<void> {
  const folder = await open(path, 'r')
  try {
    await folder.sync()
  } finally {
    await folder.close()
  }
}
