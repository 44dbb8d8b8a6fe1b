import { chmodSync, chownSync, mkdirSync, statSync } from 'node:fs'
import { open, readFile, rename, rm } from 'node:fs/promises'
import { join } from 'node:path'
import { type LogKey, parsePrivateKey, writePrivateKey } from '@/lib/evidence/log-key'
import type { Vkey } from '@/lib/evidence/vkey'
import { LogBroken } from './log-broken'

/** The folder of secret keys in a data folder, open to its owner alone; made when it is missing. */
export function keyFolder(dataDir: string): string {
  const folder = join(/* turbopackIgnore: true */ dataDir, 'keys')
  mkdirSync(folder, { recursive: true, mode: 0o700 })
  chmodSync(folder, 0o700)
  giveToOwner(dataDir, folder)
  return folder
}

/** Where the secret key of a vkey lies. */
export function keyFile(dataDir: string, vkey: Vkey): string {
  return join(/* turbopackIgnore: true */ dataDir, 'keys', `log-${vkey.keyId}.key`)
}

/** Write a secret key, readable by its owner alone; on the disk when the promise settles. */
export async function keepLogKey(dataDir: string, key: LogKey): Promise<void> {
  const folder = keyFolder(dataDir)
  const path = keyFile(dataDir, key.vkey)
  const file = await open(`${path}.new`, 'w', 0o600)
  try {
    await file.chmod(0o600)
    await file.writeFile(`${writePrivateKey(key)}\n`)
    await file.sync()
  } finally {
    await file.close()
  }
  giveToOwner(dataDir, `${path}.new`)
  await rename(`${path}.new`, path)
  const entries = await open(folder, 'r')
  try {
    await entries.sync()
  } finally {
    await entries.close()
  }
}

/** Load the secret key of a vkey; null when the file is missing. @throws LogBroken `key-wrong` when the file holds another key */
export async function loadLogKey(dataDir: string, vkey: Vkey): Promise<LogKey | null> {
  const path = keyFile(dataDir, vkey)
  const text = await readFile(path, 'utf8').catch((error: NodeJS.ErrnoException) => {
    if (error.code === 'ENOENT') return null
    throw error
  })
  if (text === null) return null
  const key = parsePrivateKey(text.trimEnd())
  if (key?.vkey.text !== vkey.text)
    throw new LogBroken('key-wrong', `${path} does not hold the key that signs this log.`)
  return key
}

/** Remove a secret key that signs nothing any more. */
export async function dropLogKey(dataDir: string, vkey: Vkey): Promise<void> {
  await rm(keyFile(dataDir, vkey), { force: true })
}

/** Root may work on another user's store: what it writes there stays that user's. */
function giveToOwner(dataDir: string, path: string): void {
  if (process.getuid?.() !== 0) return
  const owner = statSync(dataDir)
  chownSync(path, owner.uid, owner.gid)
}
