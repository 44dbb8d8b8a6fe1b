import { randomUUID } from 'node:crypto'
import { createWriteStream } from 'node:fs'
import { mkdtemp, rename, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { basename, dirname, join, resolve } from 'node:path'
import { pipeline } from 'node:stream/promises'
import { parseArgs } from 'node:util'
import { StreamId } from '@/lib/domain/facts/fact'
import { gatherPackage } from '@/lib/server/dossier/gather-package'
import { packFiles } from '@/lib/server/dossier/pack-files'
import { headsOf } from '@/lib/server/store/heads'
import { PlainError } from './plain-error'
import { say } from './say'
import { tenantFor, withStore } from './with-store'

/** `package REPAIR FILE.zip [--revision N]`: the dossier with original photos, certificates and readings. Without a revision the record as it stands, for review; it issues nothing. */
export async function runPackage(parameters: string[]): Promise<void> {
  const { values, positionals } = parseArgs({
    args: parameters,
    options: { revision: { type: 'string' }, tenant: { type: 'string' } },
    allowPositionals: true,
    strict: true,
  })
  const [number, file] = positionals
  if (!number || !file || positionals.length > 2 || (values.revision && !/^\d{1,3}$/.test(values.revision)))
    throw new PlainError('Say which repair and where to: underwrap package REPAIR FILE.zip [--revision N]')
  const out = resolve(file)
  const stream = StreamId.safeParse(`repair:${number}`)
  const folder = await mkdtemp(join(tmpdir(), 'underwrap-package-'))
  const unfinished = join(dirname(out), `.${basename(out)}.${randomUUID()}`)
  try {
    await withStore(async (store) => {
      const tenant = await tenantFor(store, values.tenant)
      const [head] = stream.success ? await headsOf(store, tenant.id, [stream.data]) : []
      if (!stream.success || !head?.length) throw new PlainError(`There is no repair ${number} in this store.`)
      const revision = values.revision === undefined ? null : Number(values.revision)
      const gathered = await gatherPackage(store, tenant.id, stream.data, revision, folder)
      if (!gathered.ok) throw new PlainError(`Revision ${revision} of the dossier of ${number} was never issued.`)
      await pipeline(packFiles(gathered.value), createWriteStream(unfinished)).catch((cause: NodeJS.ErrnoException) => {
        throw cause.code === 'ENOENT' || cause.code === 'EACCES' || cause.code === 'ENOTDIR'
          ? new PlainError(`${out} cannot be written (${cause.code}).`)
          : cause
      })
      await rename(unfinished, out)
      const { files, missing } = gathered.value
      await say(`${out}: ${files.length} files`)
      for (const sha256 of missing) await say(`not in the store: ${sha256}`)
    })
  } finally {
    await rm(unfinished, { force: true })
    await rm(folder, { recursive: true, force: true })
  }
}
