import { mkdir, open } from 'node:fs/promises'
import { dirname } from 'node:path'

/** Folders under a root that are made, and whose names are on the disk, before `make` settles. */
export type SyncedFolders = { make(path: string): Promise<void> }

/**
 * Make folders durably: each is made, then its parent synced, once in the life of this object; writers that ask for the
 * same folder wait for the same work.
 * @throws Error when the disk refuses; the next call tries again
 */
export function createSyncedFolders(root: string): SyncedFolders {
  const known = new Map<string, Promise<void>>()

  function make(path: string): Promise<void> {
    const begun = known.get(path)
    if (begun !== undefined) return begun
    const work = makeOne(path)
    known.set(path, work)
    work.catch(() => known.delete(path))
    return work
  }

  async function makeOne(path: string): Promise<void> {
    if (path !== root) await make(dirname(path))
    const firstMade = await mkdir(path, { recursive: path === root }).catch((error: NodeJS.ErrnoException) => {
      if (error.code !== 'EEXIST') throw error
    })
    // above the root only what was made just now is synced: the rest may not be ours to open
    if (path !== root || firstMade !== undefined) await syncFolder(dirname(firstMade ?? path))
  }

  return { make }
}

/**
 * Bring a folder's entries to the disk.
 * @throws Error when the folder is gone or the disk refuses
 */
export async function syncFolder(path: string): Promise<void> {
  const folder = await open(path, 'r')
  try {
    await folder.sync()
  } finally {
    await folder.close()
  }
}
