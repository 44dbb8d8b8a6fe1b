import { createReadStream } from 'node:fs'
import { type FileHandle, mkdir, open, rename, unlink } from 'node:fs/promises'
import { dirname } from 'node:path'
import type { PhotoSource } from '@/lib/photo/photo-store'

/**
 * Write the source to `temporaryPath`, sync it, rename it to `finalPath` and sync every folder whose entries changed,
 * so that a power cut leaves the whole file or no file under its final name. Both paths lie in one file system.
 * @param watch is called with every chunk written; throwing there leaves nothing under the final name
 * @throws Error when the disk refuses
 */
export async function writeSyncedFile(
  temporaryPath: string,
  finalPath: string,
  source: PhotoSource,
  watch: (chunk: Uint8Array) => void,
  accept: () => void,
): Promise<void> {
  const folder = dirname(finalPath)
  const firstMade = await mkdir(folder, { recursive: true })
  await mkdir(dirname(temporaryPath), { recursive: true })
  try {
    const file = await open(temporaryPath, 'wx', 0o644)
    try {
      await copyInto(file, source, watch)
      accept()
      await file.sync()
    } finally {
      await file.close()
    }
    await rename(temporaryPath, finalPath)
  } catch (error) {
    await unlink(temporaryPath).catch(() => undefined)
    throw error
  }
  await Promise.all(foldersChanged(folder, firstMade).map(syncFolder))
}

async function copyInto(file: FileHandle, source: PhotoSource, watch: (chunk: Uint8Array) => void): Promise<void> {
  if (source instanceof Uint8Array) {
    watch(source)
    await file.writeFile(source)
    return
  }
  for await (const chunk of createReadStream(source.path)) {
    watch(chunk)
    await file.writeFile(chunk)
  }
}

/** The folder of the file and, where folders were made on the way, the parent of each of these. */
function foldersChanged(folder: string, firstMade: string | undefined): string[] {
  const changed = [folder]
  if (firstMade === undefined) return changed
  for (let made = folder; made.length >= firstMade.length; made = dirname(made)) changed.push(dirname(made))
  return changed
}

async function syncFolder(path: string): Promise<void> {
  const folder = await open(path, 'r')
  try {
    await folder.sync()
  } finally {
    await folder.close()
  }
}
