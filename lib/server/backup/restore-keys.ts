import { open, readdir, readFile, rm } from 'node:fs/promises'
import { join } from 'node:path'
import { keyFolder } from '@/lib/server/log/key-folder'
import { BackupRefused } from './backup-refusal'
import type { OpenBackup } from './read-backup'

const KEY_AT_MOST_BYTES = 1_000_000

/**
 * Put the keys of a backup into the data folder, each readable by its owner alone. A key that lies there already with the same bytes was left by a restore that was cut short.
 * @throws BackupRefused `store-not-empty` for other keys there; what was written is then taken out again
 */
export async function restoreKeys(dataDir: string, backup: OpenBackup): Promise<void> {
  const folder = keyFolder(dataDir)
  const present = new Set(await readdir(folder))
  const keys = backup.manifest.files.filter((file) => file.name.startsWith('keys/'))
  const written: string[] = []
  try {
    for (const { name, sizeBytes } of keys) {
      if (sizeBytes > KEY_AT_MOST_BYTES) throw new BackupRefused('damaged', `${name} is too large for a key.`)
      const pieces: Buffer[] = []
      for await (const piece of backup.read(name)) pieces.push(piece)
      const path = join(folder, name.slice('keys/'.length))
      if (!present.delete(name.slice('keys/'.length))) {
        written.push(path)
        await writeKey(path, Buffer.concat(pieces))
      } else if (!(await readFile(path)).equals(Buffer.concat(pieces))) throw foreign(path)
    }
    const [other] = present
    if (other !== undefined) throw foreign(join(folder, other))
  } catch (cause) {
    for (const path of written) await rm(path, { force: true })
    throw cause
  }
}

function foreign(path: string): BackupRefused {
  return new BackupRefused('store-not-empty', `${path} is a key of another store: restore into a new data folder.`)
}

async function writeKey(path: string, bytes: Buffer): Promise<void> {
  const file = await open(path, 'wx', 0o600)
  try {
    await file.writeFile(bytes)
    await file.sync()
  } finally {
    await file.close()
  }
}
