import { readFile } from 'node:fs/promises'
import { resolve } from 'node:path'
import { parseArgs } from 'node:util'
import { parseCheckpoint, type SignedCheckpoint } from '@/lib/evidence/checkpoint'
import { restoreBackup } from '@/lib/server/backup/restore-backup'
import { PlainError } from './plain-error'
import { say } from './say'
import { withStore } from './with-store'

/** `restore FILE [--known CHECKPOINT]`: fill an empty store from a backup. The answer is each organisation's head, the same as when it was made. */
export async function runRestore(parameters: string[]): Promise<void> {
  const { values, positionals } = parseArgs({
    args: parameters,
    options: { known: { type: 'string' } },
    allowPositionals: true,
    strict: true,
  })
  const [name] = positionals
  if (!name) throw new PlainError('Say from what: underwrap restore FILE')
  const known = values.known === undefined ? null : await loadKnown(values.known)
  await withStore(async (store) => {
    const { heads, missing, madeAt } = await restoreBackup(store, resolve(name), known)
    await say(
      [
        ...missing.map((sha256) => `missing: object ${sha256} was not in the backup`),
        ...heads.map((head) => head.checkpoint),
        `Restored as of ${madeAt}; the heads above were computed again and are the same. Everybody signs in anew.`,
      ].join('\n'),
    )
  })
}

async function loadKnown(name: string): Promise<SignedCheckpoint> {
  const text = await readFile(name, 'utf8').catch((cause: NodeJS.ErrnoException) => {
    throw new PlainError(`${name} cannot be read (${cause.code}).`)
  })
  const checkpoint = parseCheckpoint(text)
  if (!checkpoint.ok) throw new PlainError(`${name} is no checkpoint: its ${checkpoint.error.at} is wrong.`)
  return checkpoint.value
}
