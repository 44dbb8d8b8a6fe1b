import { createWriteStream } from 'node:fs'
import { rename, rm } from 'node:fs/promises'
import { resolve } from 'node:path'
import { finished } from 'node:stream/promises'
import { parseArgs } from 'node:util'
import { exportLog } from '@/lib/server/log/export-log'
import { PlainError } from './plain-error'
import { say } from './say'
import { tenantFor, withStore } from './with-store'

/** `export-log FILE`: write the whole log of an organisation, with the checkpoint that closes it. The answer is that checkpoint. */
export async function runExportLog(parameters: string[]): Promise<void> {
  const { values, positionals } = parseArgs({
    args: parameters,
    options: { tenant: { type: 'string' } },
    allowPositionals: true,
    strict: true,
  })
  const [name] = positionals
  if (!name) throw new PlainError('Say where to: underwrap export-log FILE')
  const path = resolve(name)
  await withStore(async (store) => {
    const tenant = await tenantFor(store, values.tenant)
    const stream = createWriteStream(`${path}.new`, { mode: 0o600 })
    const written = finished(stream)
    written.catch(() => {})
    try {
      const checkpoint = await exportLog(store, tenant.id, stream)
      stream.end()
      await written
      await rename(`${path}.new`, path)
      await say(checkpoint.text)
    } catch (cause) {
      stream.destroy()
      await rm(`${path}.new`, { force: true })
      const { code } = cause as NodeJS.ErrnoException
      throw code === 'ENOENT' || code === 'EACCES' || code === 'ENOTDIR'
        ? new PlainError(`${path} cannot be written (${code}).`)
        : cause
    }
  })
}
