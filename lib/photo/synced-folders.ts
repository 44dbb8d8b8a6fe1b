import { mkdir, open } from 'node:fs/promises'
import { dirname } from 'node:path'
import { createSlots } from '@/lib/photo/slots'

/**
 * Folders below a root. `prepare` makes one with its parents; `settle` brings its entries to the disk, and those of each
 * parent in which the name of a folder on the way may not be there yet.
 */
export type SyncedFolders = { prepare(path: string): Promise<void>; settle(path: string): Promise<void> }

/**
 * Keep folders below `root` durable with few syncs: parents are synced after the files, all at once, and once each in the
 * life of this object. Both methods throw when the disk refuses; a later call tries again.
 */
export function createSyncedFolders(root: string): SyncedFolders {
  const named = new Set<string>()
  // the first sync takes the disk's time and brings most of the others with it, so waiting side by side gains nothing
  const oneAtATime = createSlots(1)

  async function prepare(path: string): Promise<void> {
    if (named.has(path)) return
    const firstMade = await mkdir(path, { recursive: true })
    if (firstMade === undefined) return
    // only folders made just now are named above the root: the others need not be ours to open
    for (let folder = root; folder.length >= firstMade.length; folder = dirname(folder))
      await syncFolder(dirname(folder))
  }

  async function settle(path: string): Promise<void> {
    await oneAtATime.run(async () => {
      const unnamed: string[] = []
      for (let folder = path; folder !== root && !named.has(folder); folder = dirname(folder)) unnamed.push(folder)
      for (const folder of [path, ...unnamed.map(dirname)]) await syncFolder(folder)
      for (const folder of unnamed) named.add(folder)
    })
  }

  return { prepare, settle }
}

async function syncFolder(path: string): Promise<void> {
  const folder = await open(path, 'r')
  try {
    await folder.sync()
  } finally {
    await folder.close()
  }
}
