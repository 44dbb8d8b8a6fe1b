import { resolve } from 'node:path'
import { parseArgs } from 'node:util'
import { StreamId } from '@/lib/domain/facts/fact'
import { writeReviewDossier } from '@/lib/server/dossier/write-review-dossier'
import { headsOf } from '@/lib/server/store/heads'
import { PlainError } from './plain-error'
import { say } from './say'
import { tenantFor, withStore } from './with-store'

/** `dossier REPAIR --out FILE`: write a copy for review. It issues nothing. */
export async function runDossier(parameters: string[]): Promise<void> {
  const { values, positionals } = parseArgs({
    args: parameters,
    options: { out: { type: 'string' }, tenant: { type: 'string' } },
    allowPositionals: true,
    strict: true,
  })
  const [number] = positionals
  if (!number || !values.out)
    throw new PlainError('Say which repair and where to: underwrap dossier REPAIR --out FILE.pdf')
  const out = resolve(values.out)
  const stream = StreamId.safeParse(`repair:${number}`)
  await withStore(async (store) => {
    const tenant = await tenantFor(store, values.tenant)
    const [head] = stream.success ? await headsOf(store, tenant.id, [stream.data]) : []
    if (!stream.success || !head?.length) throw new PlainError(`There is no repair ${number} in this store.`)
    const written = await writeReviewDossier(store, tenant.id, stream.data, out).catch(
      (cause: NodeJS.ErrnoException) => {
        throw cause.code === 'ENOENT' || cause.code === 'EACCES' || cause.code === 'ENOTDIR'
          ? new PlainError(`${out} cannot be written (${cause.code}).`)
          : cause
      },
    )
    if (!written.ok) throw new PlainError(`There is no repair ${number} in this store.`)
    await say(out)
  })
}
