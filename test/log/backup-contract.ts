import { existsSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest'
import { ZipFile } from 'yazl'
import { parseCheckpoint, type SignedCheckpoint } from '@/lib/evidence/checkpoint'
import { restoreBackup } from '@/lib/server/backup/restore-backup'
import { writeBackup } from '@/lib/server/backup/write-backup'
import { checkStore } from '@/lib/server/check/check-store'
import { checkpointNow } from '@/lib/server/log/checkpoint-now'
import { type OpenStore, openStore } from '@/lib/server/store/open-store'
import { remark } from '@/test/store/facts-for-tests'
import { makeDataFolder, openTestStore, type TestStore } from '@/test/store/test-store'
import { appendTo, fillStore, QI } from './filled-store'
import { partsOf } from './log-for-tests'
import { filesOfZip, forged } from './zip-for-tests'

/** What backup and restore keep to, whichever server is under both stores. */
export function describeBackup(name: string, serverUrl: (database: string) => Promise<string | undefined>): void {
  describe(`backup and restore on ${name}`, { timeout: 180_000 }, () => {
    let store: TestStore
    let objects: Awaited<ReturnType<typeof fillStore>>
    let file: string
    let target: OpenStore
    let targetFolder: string

    beforeAll(async () => {
      const [from, to] = [await serverUrl('backup'), await serverUrl('restore')]
      store = await openTestStore({ ...(from ? { url: from } : {}), now: '2026-05-20T12:00:00+01:00' })
      objects = await fillStore(store)
      await store.db.pool.query(`insert into "user" (id, name, email) values ('u1', 'Q I', 'qi@example.org')`)
      file = join(store.dataDir, 'backup.zip')
      targetFolder = makeDataFolder()
      target = await openStore({
        dataDir: targetFolder,
        ...(to ? { url: to } : {}),
        now: () => '2026-05-20T13:00:00+01:00',
      })
    })
    afterAll(async () => {
      await target?.close()
      rmSync(targetFolder, { recursive: true, force: true })
      await store?.remove()
    })

    const isEmpty = async () => {
      const counts = await Promise.all(
        ['tenants', 'facts', 'user', 'tree_nodes', 'checkpoints'].map((table) =>
          target.db.pool.query(`select 1 from "${table}"`),
        ),
      )
      const photoFolder = join(targetFolder, 'photos')
      const inFolder = existsSync(photoFolder) ? readdirSync(photoFolder, { recursive: true, withFileTypes: true }) : []
      const photos = inFolder.filter((one) => one.isFile())
      const keys = readdirSync(targetFolder).includes('keys') ? readdirSync(join(targetFolder, 'keys')) : []
      return counts.every((answer) => answer.rows.length === 0) && photos.length === 0 && keys.length === 0
    }
    /** The backup with files changed, left out (null) or added. */
    const changed = async (change: Record<string, Buffer | null>, name = 'changed.zip') => {
      const files = new Map([...(await filesOfZip(file)), ...Object.entries(change)])
      const zip = new ZipFile()
      for (const [entry, bytes] of files) if (bytes !== null) zip.addBuffer(bytes, entry)
      zip.end()
      const pieces: Buffer[] = []
      for await (const piece of zip.outputStream) pieces.push(Buffer.from(piece))
      const path = join(store.dataDir, name)
      writeFileSync(path, Buffer.concat(pieces))
      return path
    }
    const refusal = async (path: string, known?: SignedCheckpoint) => {
      const thrown: unknown = await restoreBackup(target, path, known).catch((cause: unknown) => cause)
      expect(await isEmpty()).toBe(true)
      return thrown
    }

    describe('while the target is empty', () => {
      beforeAll(async () => {
        await writeBackup(store, file)
      })
      afterEach(async () => expect(await isEmpty()).toBe(true))

      test('the file is its owner’s alone and nothing unfinished lies beside it', () => {
        expect(statSync(file).mode & 0o777).toBe(0o600)
        expect(readdirSync(store.dataDir)).not.toContain('backup.zip.new')
      })

      test('any file of it that was changed, cut or taken out is refused, and nothing is restored', async () => {
        const files = await filesOfZip(file)
        const facts = files.get('tables/facts.jsonl') ?? Buffer.alloc(0)
        const flipped = Buffer.from(facts)
        flipped[200] = (flipped[200] ?? 0) ^ 1
        const photo = `objects/${objects.photo}`
        for (const change of [
          { 'tables/facts.jsonl': flipped },
          { 'tables/facts.jsonl': facts.subarray(0, facts.indexOf(10) + 1) },
          { 'tables/user.jsonl': null },
          { [photo]: null },
          { [photo]: Buffer.alloc((files.get(photo) ?? facts).length, 1) },
          { 'objects/readme': Buffer.from('x') },
          { 'tables/pg_authid.jsonl': Buffer.from('{}\n') },
          { 'keys/.profile': Buffer.from('x') },
        ])
          expect(await refusal(await changed(change))).toMatchObject({ name: 'BackupRefused', code: 'damaged' })
        expect(await refusal(await changed({ 'manifest.json': null }))).toMatchObject({ code: 'unreadable' })
        expect(await refusal(await changed({ 'manifest.json': Buffer.from('{}') }))).toMatchObject({
          code: 'unreadable',
        })
      })

      test('names that lead out of the store, a file that is no ZIP, and one cut short are unreadable or damaged', async () => {
        // The writer refuses such names itself: one is put in place of a name as long.
        const path = await changed({ 'keys/aa.bb': Buffer.from('x') })
        const bytes = readFileSync(path)
        for (const name of ['../aa.bbbb', '/etc/aa.bb', 'keys\\aa.bb', 'keys/../bb'])
          for (const at of [bytes.indexOf('keys/aa.bb'), bytes.lastIndexOf('keys/aa.bb')]) {
            const hostile = Buffer.from(bytes)
            hostile.write(name, at)
            const hostilePath = join(store.dataDir, 'hostile.zip')
            writeFileSync(hostilePath, hostile)
            expect(await refusal(hostilePath)).toMatchObject({ name: 'BackupRefused' })
          }
        for (const cut of [readFileSync(file).subarray(0, 5000), Buffer.from('no zip'), Buffer.alloc(0)]) {
          const cutPath = join(store.dataDir, 'cut.zip')
          writeFileSync(cutPath, cut)
          expect(await refusal(cutPath)).toMatchObject({ code: 'unreadable' })
        }
        expect(await refusal(join(store.dataDir, 'none.zip'))).toMatchObject({ code: 'unreadable' })
      })

      test('a backup that was rewritten as a whole does not give the head that the log’s key signed', async () => {
        const { manifest, facts } = await forged(await filesOfZip(file))
        const path = await changed({ 'tables/facts.jsonl': facts, 'manifest.json': manifest })
        expect(await refusal(path)).toMatchObject({ code: 'head-differs' })
      })

      test('one that is older than a checkpoint somebody holds is named, and so is one that does not contain it', async () => {
        await appendTo(store, [remark('after the backup')])
        const later = partsOf(await checkpointNow(store, store.tenant, QI))
        expect(await refusal(file, later)).toMatchObject({
          code: 'older-than-known',
          message: expect.stringContaining('1 would be missing'),
        })
        expect(await refusal(file, { ...later, size: later.size - 1 })).toMatchObject({ code: 'known-differs' })
        expect(await refusal(file, { ...later, origin: 'underwrap/0000000000000000/x' })).toMatchObject({
          code: 'known-differs',
        })
        const note =
          (await store.db.pool.query('select note from checkpoints order by size limit 1')).rows[0]?.note ?? ''
        const unsigned = partsOf({ text: note })
        expect(await refusal(file, { ...unsigned, signatures: [] })).toMatchObject({ code: 'known-unreadable' })
      })
    })

    describe('into an empty store', () => {
      test('it brings back rows, photos, dossier and keys; the head is the same and everything checks', async () => {
        const { heads } = await writeBackup(store, file)
        const [first] = (await store.db.pool.query('select note from checkpoints order by size limit 1')).rows
        const known = parseCheckpoint(first.note)
        if (!known.ok) throw new Error(known.error.at)
        const restored = await restoreBackup(target, file, known.value)
        expect(restored).toMatchObject({ heads, missing: [] })
        const now = await checkpointNow(target, store.tenant, QI)
        expect(now.text).toBe(heads[0]?.checkpoint)
        expect(now.text).toBe((await checkpointNow(store, store.tenant, QI)).text)
        for (const table of [
          'facts',
          'user',
          'tenants',
          'checkpoints',
          'store_marks',
          'fact_cites',
          'photos',
          'issues',
        ]) {
          const rows = async (of: OpenStore) =>
            (await of.db.pool.query(`select t::text from "${table}" t order by 1`)).rows
          expect(await rows(target)).toEqual(await rows(store))
        }
        const lines: string[] = []
        expect((await checkStore(target, (line) => lines.push(line))).brokenCount).toBe(0)
        expect(lines).toEqual([])
        expect(readdirSync(join(targetFolder, 'keys'))).toEqual(readdirSync(join(store.dataDir, 'keys')))
      })

      test('a store that is not empty takes none, and stays as it is', async () => {
        await expect(restoreBackup(target, file)).rejects.toMatchObject({ code: 'store-not-empty' })
        expect((await checkStore(target, () => {})).brokenCount).toBe(0)
      })

      test('a backup of a store that lacks a photo says which', async () => {
        rmSync(store.photos.path?.(objects.photo) ?? '')
        expect((await writeBackup(store, join(store.dataDir, 'lacking.zip'))).missing).toEqual([objects.photo])
      })
    })
  })
}
