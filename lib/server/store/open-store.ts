import { join } from 'node:path'
import { dataFolder, openDatabase } from '@/db/client'
import type { Moment } from '@/lib/domain/time'
import { createFolderPhotoStore } from '@/lib/photo/folder-photo-store'
import type { PhotoStore } from '@/lib/photo/photo-store'
import { clockOf } from './clock'
import type { Store } from './store'

export type StoreOptions = {
  dataDir?: string
  url?: string
  photos?: PhotoStore
  /** A clock of the caller's, for tests and the seed. */
  now?: () => Moment
  /** File with the present moment; only a store made for tests takes it. */
  testClockFile?: string
}

/** An open store. `readClock` looks again which clock the store has, after it was seeded. */
export type OpenStore = Store & { readClock(): Promise<void>; close(): Promise<void> }

/**
 * Open the store that the environment names (`DATABASE_URL`, `UNDERWRAP_DATA`, `PHOTO_STORE`, `UNDERWRAP_TEST_CLOCK`) or the options do.
 * @throws StoreUnavailable when there is no database; Error for a test clock on a real store
 */
export async function openStore(options: StoreOptions = {}): Promise<OpenStore> {
  const dataDir = options.dataDir ?? dataFolder()
  const db = await openDatabase({
    ...(options.dataDir === undefined ? {} : { dataDir: options.dataDir }),
    ...(options.url === undefined ? {} : { url: options.url }),
  })
  const readClock = async () =>
    options.now ?? (await clockOf(db, options.testClockFile ?? process.env.UNDERWRAP_TEST_CLOCK))
  try {
    let clock = await readClock()
    return {
      db,
      dataDir,
      photos: options.photos ?? createFolderPhotoStore(process.env.PHOTO_STORE || join(dataDir, 'photos')),
      now: () => clock(),
      async readClock() {
        clock = await readClock()
      },
      close: () => db.close(),
    }
  } catch (cause) {
    await db.close()
    throw cause
  }
}
