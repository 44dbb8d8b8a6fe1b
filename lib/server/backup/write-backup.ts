import { createHash } from 'node:crypto'
import { createWriteStream } from 'node:fs'
import { open, rename, rm } from 'node:fs/promises'
import { Readable } from 'node:stream'
import { pipeline } from 'node:stream/promises'
import { ZipFile } from 'yazl'
import { Sha256 } from '@/lib/domain/facts/fact'
import { canonicalBytes } from '@/lib/evidence/canonical-bytes'
import { withSnapshot } from '@/lib/server/check/with-snapshot'
import { loadStoreId } from '@/lib/server/log/store-id'
import type { OpenStore } from '@/lib/server/store/open-store'
import { headsInSnapshot, openLogs } from './backup-heads'
import { keptTables, rowsAsLines } from './backup-tables'
import { keptObjects, keyFiles } from './kept-files'
import type { BackupFileEntry, BackupManifest } from './manifest'

/** What a backup holds. */
export type WrittenBackup = Pick<BackupManifest, 'heads' | 'missing'> & { fileCount: number; sizeBytes: number }

/**
 * Write everything of a store that cannot be rebuilt into one ZIP, readable by its owner alone: table rows, photos and issued files, keys, heads. The database is read as
 * it stood at one instant, while others work on. The file appears under its name when it is whole and on the disk.
 * @throws LogBroken when the log cannot be signed; Error when the disk refuses
 */
export async function writeBackup(store: OpenStore, path: string): Promise<WrittenBackup> {
  const logs = await openLogs(store)
  const unfinished = `${path}.new`
  try {
    const written = await withSnapshot(store, async (snapshot) => {
      const heads = await headsInSnapshot(store, snapshot, logs)
      const { objects, missing } = await keptObjects(snapshot)
      const files: BackupFileEntry[] = []
      const zip = new ZipFile()
      const add = (name: string, compress: boolean, read: () => AsyncIterable<Buffer> | Iterable<Buffer>) =>
        zip.addReadStreamLazy(name, { compress, mode: 0o100600 }, (take) =>
          take(null, Readable.from(digested(name, read(), files))),
        )
      for (const table of await keptTables(snapshot.db.queries))
        add(`tables/${table}.jsonl`, true, () => rowsAsLines(snapshot.db.queries, table))
      for (const { name, read } of [...(await keyFiles(store.dataDir)), ...objects]) add(name, false, read)
      const storeId = await loadStoreId(store.db)
      const manifest = (): BackupManifest => ({
        v: 1,
        kind: 'underwrap backup',
        storeId,
        madeAt: new Date().toISOString(),
        heads,
        files: [...files].sort((a, b) => (a.name < b.name ? -1 : 1)),
        missing,
      })
      // Its turn comes last, when every other file has its digest.
      zip.addReadStreamLazy('manifest.json', { compress: true, mode: 0o100600 }, (take) =>
        take(null, Readable.from([Buffer.from(canonicalBytes(manifest()))])),
      )
      zip.end()
      await writeZip(zip, unfinished)
      return { heads, missing, fileCount: files.length, sizeBytes: files.reduce((sum, one) => sum + one.sizeBytes, 0) }
    })
    await rename(unfinished, path)
    return written
  } catch (cause) {
    await rm(unfinished, { force: true })
    throw cause
  }
}

async function writeZip(zip: ZipFile, path: string): Promise<void> {
  const output = createWriteStream(path, { mode: 0o600, flags: 'w' })
  const failed = new Promise<never>((_, fail) => zip.once('error', fail))
  try {
    await Promise.race([pipeline(zip.outputStream, output), failed])
  } catch (cause) {
    output.destroy()
    throw cause
  }
  const file = await open(path, 'r+')
  try {
    await file.chmod(0o600)
    await file.sync()
  } finally {
    await file.close()
  }
}

async function* digested(
  name: string,
  pieces: AsyncIterable<Buffer> | Iterable<Buffer>,
  files: BackupFileEntry[],
): AsyncGenerator<Buffer> {
  const hash = createHash('sha256')
  let sizeBytes = 0
  for await (const piece of pieces) {
    hash.update(piece)
    sizeBytes += piece.length
    yield piece
  }
  files.push({ name, sha256: Sha256.parse(hash.digest('hex')), sizeBytes })
}
