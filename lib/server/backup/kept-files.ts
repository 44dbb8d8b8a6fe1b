import { createReadStream } from 'node:fs'
import { readdir } from 'node:fs/promises'
import { join } from 'node:path'
import type { Sha256 } from '@/lib/domain/facts/fact'
import { sha256Of, sha256OfFile } from '@/lib/evidence/sha256'
import { checkFacts } from '@/lib/server/check/check-facts'
import { objectsOf } from '@/lib/server/check/objects-of'
import { startTally } from '@/lib/server/check/tally'
import type { Store } from '@/lib/server/store/store'
import { listTenants } from '@/lib/server/store/tenants'

/** A file of a backup and how to read it. */
export type KeptFile = { name: string; read(): AsyncIterable<Buffer> | Iterable<Buffer> }

/** Every object that a sound fact cites, its bytes checked against its name; those gone or damaged are named apart. */
export async function keptObjects(store: Store): Promise<{ objects: KeptFile[]; missing: Sha256[] }> {
  const cited = new Map<Sha256, boolean>()
  for (const { id } of await listTenants(store))
    await checkFacts(
      store,
      id,
      startTally(() => {}),
      async (sound) => {
        for (const object of sound.flatMap(({ fact }) => objectsOf(fact)))
          cited.set(object.sha256, object.mustBeStored || cited.get(object.sha256) === true)
      },
    )
  const objects: KeptFile[] = []
  const missing: Sha256[] = []
  for (const [sha256, mustBeStored] of [...cited].sort(([a], [b]) => (a < b ? -1 : 1))) {
    const kept = await soundObject(store, sha256)
    if (kept) objects.push(kept)
    else if (mustBeStored) missing.push(sha256)
  }
  return { objects, missing }
}

async function soundObject({ photos }: Store, sha256: Sha256): Promise<KeptFile | null> {
  const name = `objects/${sha256}`
  if (photos.path) {
    const path = photos.path(sha256)
    return (await photos.has(sha256)) && (await sha256OfFile(path)) === sha256
      ? { name, read: () => createReadStream(path) }
      : null
  }
  const bytes = await photos.read(sha256)
  return bytes && sha256Of(bytes) === sha256 ? { name, read: () => [Buffer.from(bytes)] } : null
}

/** The secret keys of a data folder. */
export async function keyFiles(dataDir: string): Promise<KeptFile[]> {
  const folder = join(dataDir, 'keys')
  const found = await readdir(folder, { withFileTypes: true }).catch((error: NodeJS.ErrnoException) => {
    if (error.code === 'ENOENT') return []
    throw error
  })
  return found
    .filter((one) => one.isFile() && /^[A-Za-z0-9][A-Za-z0-9._-]{0,80}$/.test(one.name) && !one.name.endsWith('.new'))
    .map((one) => ({ name: `keys/${one.name}`, read: () => createReadStream(join(folder, one.name)) }))
}
