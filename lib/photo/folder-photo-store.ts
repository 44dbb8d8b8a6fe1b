import { createHash, randomUUID } from 'node:crypto'
import { createReadStream } from 'node:fs'
import { readFile, stat } from 'node:fs/promises'
import { dirname, join, resolve } from 'node:path'
import { isSha256Hex, type PhotoSource, type PhotoStore } from '@/lib/photo/photo-store'
import { createSlots } from '@/lib/photo/slots'
import { createSyncedFolders } from '@/lib/photo/synced-folders'
import { writeSyncedObject } from '@/lib/photo/synced-object'

/**
 * A photo store in a folder: object `aabbcc…` lies at `aa/aabbcc…`. A second level was measured and left out: nearly every
 * photo would make new folders, which cost more than writing it. Unfinished writes lie in `.incoming` and may be
 * removed while no process runs. Two writers of one object race harmlessly: both rename the same bytes into place.
 */
export function createFolderPhotoStore(folder: string): Required<PhotoStore> {
  const root = resolve(folder)
  const incoming = join(root, '.incoming')
  const folders = createSyncedFolders(root)
  // a waiting sync holds one of the process's four working threads, which decoding needs too
  const writeSlots = createSlots(2)

  function path(sha256: string): string {
    if (!isSha256Hex(sha256))
      throw new RangeError(
        `Expected a SHA-256 in 64 lower-case hex digits, received ${JSON.stringify(sha256.slice(0, 80))}`,
      )
    return join(root, sha256.slice(0, 2), sha256)
  }

  async function place(sha256: string, source: PhotoSource, expectedSha256: string | null): Promise<void> {
    const finalPath = path(sha256)
    if (await isFile(finalPath)) {
      if ((await digestOfFile(finalPath)) !== sha256)
        throw new Error(`The stored photo ${sha256} does not match its name; it was left as it is`)
      // whoever stored it may not have come to this yet
      return folders.settle(dirname(finalPath))
    }
    await writeSlots.run(async () => {
      await Promise.all([folders.prepare(incoming), folders.prepare(dirname(finalPath))])
      await writeSyncedObject({ expectedSha256, source, temporaryPath: join(incoming, randomUUID()), finalPath })
    })
    await folders.settle(dirname(finalPath))
  }

  return {
    path,
    async add(bytes) {
      const sha256 = createHash('sha256').update(bytes).digest('hex')
      await place(sha256, bytes, null)
      return sha256
    },
    put: (sha256, source) => place(sha256, source, sha256),
    async read(sha256) {
      return isSha256Hex(sha256) ? readFile(path(sha256)).catch(nullWhenAbsent) : null
    },
    async has(sha256) {
      return isSha256Hex(sha256) && isFile(path(sha256))
    },
  }
}

async function isFile(path: string): Promise<boolean> {
  const found = await stat(path).catch(nullWhenAbsent)
  return found?.isFile() ?? false
}

async function digestOfFile(path: string): Promise<string> {
  const hash = createHash('sha256')
  for await (const chunk of createReadStream(path)) hash.update(chunk)
  return hash.digest('hex')
}

function nullWhenAbsent(error: NodeJS.ErrnoException): null {
  if (error.code === 'ENOENT' || error.code === 'ENOTDIR') return null
  throw error
}
