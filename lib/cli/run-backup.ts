import { resolve } from 'node:path'
import { parseArgs } from 'node:util'
import { writeBackup } from '@/lib/server/backup/write-backup'
import { PlainError } from './plain-error'
import { say } from './say'
import { withStore } from './with-store'

/** `backup FILE`: write the whole store into one file. The answer is each organisation's head, which somebody else should keep. */
export async function runBackup(parameters: string[]): Promise<void> {
  const { positionals } = parseArgs({ args: parameters, options: {}, allowPositionals: true, strict: true })
  const [name] = positionals
  if (!name) throw new PlainError('Say where to: underwrap backup FILE')
  const path = resolve(name)
  await withStore(async (store) => {
    const written = await writeBackup(store, path).catch((cause: NodeJS.ErrnoException) => {
      throw cause.code === 'ENOENT' || cause.code === 'EACCES' || cause.code === 'ENOTDIR'
        ? new PlainError(`${path} cannot be written (${cause.code}).`)
        : cause
    })
    await say(
      [
        ...written.missing.map((sha256) => `missing: object ${sha256} was gone or damaged and is not in the backup`),
        ...written.heads.map((head) => head.checkpoint),
        `${path} holds ${written.fileCount} files. It holds the secret keys too: keep it where only you can read it.`,
      ].join('\n'),
    )
  })
}
