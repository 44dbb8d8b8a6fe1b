import { randomUUID } from 'node:crypto'
import { mkdir, rm, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { sql } from 'drizzle-orm'
import type { SignedCheckpoint } from '@/lib/evidence/checkpoint'
import type { Transaction } from '@/lib/server/store/heads'
import type { OpenStore } from '@/lib/server/store/open-store'
import { reprojectIn } from '@/lib/server/store/reproject'
import { BackupRefused } from './backup-refusal'
import { insertLines, keptTables } from './backup-tables'
import type { BackupManifest } from './manifest'
import { type OpenBackup, readBackup } from './read-backup'
import { restoreKeys } from './restore-keys'
import { verifyKnown, verifyRestored } from './verify-restored'

const LINES_AT_ONCE = 200
const LINE_AT_MOST_BYTES = 64_000_000
/** Filled by a store before anything is entered in it; a backup brings its own. */
const MAY_BE_FILLED: ReadonlySet<string> = new Set(['store_marks', 'setup_codes'])

/** What was restored. */
export type RestoredBackup = Pick<BackupManifest, 'heads' | 'missing' | 'madeAt'>

/**
 * Restore a backup into an empty store, all or nothing: rows, keys and the proof that every log has the head it had come in one transaction; photos lie in the store before it and
 * are taken out again when it fails. With `known`, a checkpoint that somebody holds, a backup that does not contain it is refused and named.
 * @throws BackupRefused, leaving the store empty; Error when disk or database refuse, likewise
 */
export async function restoreBackup(
  store: OpenStore,
  path: string,
  known: SignedCheckpoint | null = null,
): Promise<RestoredBackup> {
  const backup = await readBackup(path)
  const added: string[] = []
  try {
    await store.db.queries.transaction((tx) => demandEmpty(tx))
    for (const { name } of backup.manifest.files)
      if (name.startsWith('objects/')) await restoreObject(store, backup, name, added)
    await store.db.queries.transaction(async (tx) => {
      await demandEmpty(tx)
      for (const table of MAY_BE_FILLED) await tx.execute(sql`delete from ${sql.identifier(table)}`)
      await restoreRows(tx, backup)
      await demandHeads(tx, backup.manifest)
      for (const head of backup.manifest.heads) {
        await verifyRestored(tx, head, backup.manifest.storeId)
        await reprojectIn(tx, head.tenant)
      }
      if (known) await verifyKnown(tx, known, backup.manifest.heads)
      await restoreKeys(store.dataDir, backup)
    })
    const { heads, missing, madeAt } = backup.manifest
    return { heads, missing, madeAt }
  } catch (cause) {
    if (store.photos.path) for (const sha256 of added) await rm(store.photos.path(sha256), { force: true })
    throw cause
  } finally {
    backup.close()
  }
}

async function demandEmpty(tx: Transaction): Promise<void> {
  await tx.execute(sql`lock table tenants in exclusive mode`)
  for (const table of await keptTables(tx)) {
    if (MAY_BE_FILLED.has(table)) continue
    const { rows } = await tx.execute(sql`select 1 from ${sql.identifier(table)} limit 1`)
    if (rows.length > 0)
      throw new BackupRefused(
        'store-not-empty',
        'A backup is restored only into an empty store (UNDERWRAP_DATA names its folder).',
      )
  }
}

async function demandHeads(tx: Transaction, { heads }: BackupManifest): Promise<void> {
  const { rows } = await tx.execute<{ id: string }>(sql`select id from tenants order by 1`)
  const named = heads.map((head) => head.tenant).sort()
  if (JSON.stringify(rows.map((row) => row.id).sort()) !== JSON.stringify(named))
    throw new BackupRefused('damaged', 'The backup does not say one head for each organisation.')
}

async function restoreObject(store: OpenStore, backup: OpenBackup, name: string, added: string[]): Promise<void> {
  const sha256 = name.slice('objects/'.length)
  const folder = join(store.dataDir, 'restoring')
  const path = join(folder, randomUUID())
  await mkdir(folder, { recursive: true, mode: 0o700 })
  try {
    await writeFile(path, backup.read(name))
    const isNew = !(await store.photos.has(sha256))
    await store.photos.put(sha256, { path }).catch((cause: unknown) => {
      throw cause instanceof RangeError ? new BackupRefused('damaged', `${name} is not what its name says.`) : cause
    })
    if (isNew) added.push(sha256)
  } finally {
    await rm(folder, { recursive: true, force: true })
  }
}

async function restoreRows(tx: Transaction, backup: OpenBackup): Promise<void> {
  const tables = await keptTables(tx)
  const named = backup.manifest.files.flatMap(({ name }) => /^tables\/(.*)\.jsonl$/.exec(name)?.[1] ?? [])
  const foreign = named.find((table) => !tables.includes(table))
  if (foreign)
    throw new BackupRefused('damaged', `The backup holds a table that this version does not know: ${foreign}.`)
  for (const table of tables)
    if (named.includes(table))
      for await (const lines of linesOf(backup.read(`tables/${table}.jsonl`)))
        await insertLines(tx, table, lines).catch((cause: Error) => {
          const message = `Rows of ${table} do not fit this version of the store: ${String((cause.cause as Error | undefined)?.message ?? cause.message).slice(0, 200)}.`
          throw new BackupRefused('damaged', message)
        })
}

/** Whole lines, some at once. */
async function* linesOf(pieces: AsyncIterable<Buffer>): AsyncGenerator<string[]> {
  let lines: string[] = []
  let open: Buffer[] = []
  let openBytes = 0
  for await (const piece of pieces) {
    let from = 0
    for (let at = piece.indexOf(10); at !== -1; at = piece.indexOf(10, from)) {
      lines.push(Buffer.concat([...open, piece.subarray(from, at)]).toString('utf8'))
      open = []
      openBytes = 0
      from = at + 1
      if (lines.length >= LINES_AT_ONCE) {
        yield lines
        lines = []
      }
    }
    open.push(piece.subarray(from))
    openBytes += piece.length - from
    if (openBytes > LINE_AT_MOST_BYTES) throw new BackupRefused('damaged', 'A row of the backup is too long.')
  }
  if (openBytes > 0) throw new BackupRefused('damaged', 'A table of the backup is cut short.')
  if (lines.length > 0) yield lines
}
