import { mkdir, open } from 'node:fs/promises'
import { dirname } from 'node:path'

/**
 * Folders below a root. `prepare` makes one with its parents; `settle` brings its entries to the disk, and those of each
 * parent in which the name of a folder on the way may not be there yet.
 */
export type SyncedFolders = { prepare(path: string): Promise<void>; settle(path: string): Promise<void> }

/**
 * Keep folders below `root` durable with few syncs: after the files, together for all who wait, and for parents once in
 * the life of this object. Both methods throw when the disk refuses; a later call tries again.
 */
export function createSyncedFolders(root: string): SyncedFolders {
  const named = new Set<string>()
  let gathering = new Set<string>()
  let running: Promise<void> = Promise.resolve()
  let next: Promise<void> | null = null

  async function prepare(path: string): Promise<void> {
    if (named.has(path)) return
    const firstMade = await mkdir(path, { recursive: true })
    if (firstMade === undefined) return
    // only folders made just now are named above the root: the others need not be ours to open
    for (let folder = root; folder.length >= firstMade.length; folder = dirname(folder))
      await syncFolder(dirname(folder))
  }

  /** Who comes while a round of syncs runs joins the next round: a sync begun before their rename may not hold it. */
  function settle(path: string): Promise<void> {
    gathering.add(path)
    next ??= running.then(beginRound, beginRound)
    return next
  }

  function beginRound(): Promise<void> {
    const paths = gathering
    gathering = new Set()
    next = null
    running = syncRound(paths)
    return running
  }

  async function syncRound(paths: Set<string>): Promise<void> {
    const unnamed = new Set<string>()
    for (const path of paths) {
      for (let folder = path; folder !== root && !named.has(folder); folder = dirname(folder)) unnamed.add(folder)
    }
    // one by one: the first takes the disk's time and brings most of the others with it
    for (const folder of new Set([...paths, ...[...unnamed].map(dirname)])) await syncFolder(folder)
    for (const folder of unnamed) named.add(folder)
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
