import { createHash } from 'node:crypto'
import { createWriteStream, mkdirSync, readFileSync } from 'node:fs'
import { pipeline } from 'node:stream/promises'
import { afterAll, beforeAll, expect, test } from 'vitest'
import yauzl from 'yauzl'
import { gatherPackage } from '@/lib/server/dossier/gather-package'
import { issueDossier } from '@/lib/server/dossier/issue-dossier'
import { packFiles } from '@/lib/server/dossier/pack-files'
import { appendFacts } from '@/lib/server/store/append-facts'
import { loadStream } from '@/lib/server/store/load-stream'
import { readSealed } from './read-sealed'
import { ACTOR, REPAIR, type SealedWorld, sealedWorld } from './sealed-world'

let world: SealedWorld
beforeAll(async () => {
  world = await sealedWorld()
})
afterAll(() => world.remove())

async function packed(revision: number | null, name: string): Promise<{ path: string; missing: string[] }> {
  const { store } = world
  mkdirSync(world.at(`${name}.work`))
  const gathered = await gatherPackage(store, store.tenant, REPAIR, revision, world.at(`${name}.work`))
  if (!gathered.ok) throw new Error(gathered.error.code)
  await pipeline(packFiles(gathered.value), createWriteStream(world.at(name)))
  return { path: world.at(name), missing: gathered.value.missing }
}

type Entry = { name: string; isPacked: boolean; bytes: Buffer }

function entriesOf(path: string): Promise<Entry[]> {
  return new Promise((settle, fail) => {
    const entries: Entry[] = []
    yauzl.open(path, { lazyEntries: true }, (error, zip) => {
      if (error) return fail(error)
      zip.on('entry', (entry: yauzl.Entry) => {
        zip.openReadStream(entry, (failed, stream) => {
          if (failed) return fail(failed)
          const parts: Buffer[] = []
          stream.on('data', (part: Buffer) => parts.push(part))
          stream.on('end', () => {
            entries.push({ name: entry.fileName, isPacked: entry.compressionMethod !== 0, bytes: Buffer.concat(parts) })
            zip.readEntry()
          })
        })
      })
      zip.on('end', () => settle(entries))
      zip.on('error', fail)
      zip.readEntry()
    })
  })
}

const sha256 = (bytes: Buffer): string => createHash('sha256').update(bytes).digest('hex')

test('a package of an issue holds the file as frozen, the readings, the log key and an index of every other file', async () => {
  const { store } = world
  const issued = await issueDossier(store, store.tenant, {
    repair: REPAIR,
    purpose: 'final',
    changes: [],
    actor: ACTOR,
  })
  if (!issued.ok) throw new Error(issued.error.code)
  const { path, missing } = await packed(0, 'issue.zip')
  const entries = await entriesOf(path)
  const named = new Map(entries.map((one) => [one.name, one]))
  expect(sha256(named.get('dossier.pdf')?.bytes ?? Buffer.alloc(0))).toBe(issued.value.sha256)
  expect(JSON.parse(named.get('index.json')?.bytes.toString() ?? '')).toEqual(
    entries
      .filter((one) => one.name !== 'index.json')
      .map(({ name, bytes }) => ({ name, sha256: sha256(bytes), sizeBytes: bytes.length }))
      .sort((a, b) => (a.name < b.name ? -1 : 1)),
  )
  const { manifest } = readSealed(store.photos.path?.(issued.value.sha256) ?? '')
  expect(named.get('log-key.txt')?.bytes.toString()).toBe(`${manifest.vkey}\n`)
  // the demonstration's originals are described, not stored: each is named as missing, none is made up
  const originals = manifest.photos.map((one) => (one as unknown as { original: { sha256: string } }).original.sha256)
  expect(missing).toEqual([...new Set(originals)].sort())
  const readings = (named.get('readings.csv')?.bytes.toString() ?? '').trimEnd().split('\r\n')
  expect(readings.length).toBeGreaterThan(150)
  expect(
    readings.filter((line) => line.includes(',hardness,') && line.includes(',C-12,number,74,ShoreD,')),
  ).toHaveLength(1)
})

test('a package for review holds the stored originals unpacked, byte for byte', async () => {
  const { store } = world
  const original = Buffer.from('\xff\xd8\xff original as it came from the camera', 'latin1')
  const digest = (await store.photos.add?.(original)) ?? ''
  const at = '2026-05-29T07:00:00+01:00'
  const { facts } = await loadStream(store, store.tenant, REPAIR)
  const like = facts.find((fact) => fact.kind === 'photo-attached')
  if (like?.kind !== 'photo-attached') throw new Error('no photo')
  const photo = { ...like.body.photo, sha256: digest, sizeBytes: original.length }
  const fact = {
    ...like,
    id: '0190b000-0000-7000-8000-000000000001',
    observedAt: at,
    enteredAt: at,
    body: { ...like.body, photo },
  }
  expect((await appendFacts(store, store.tenant, [fact], { receivedBy: ACTOR })).ok).toBe(true)
  const entries = await entriesOf((await packed(null, 'review.zip')).path)
  const kept = entries.find((one) => one.name === `originals/${digest}.jpg`)
  expect(kept?.bytes.equals(original)).toBe(true)
  expect(kept?.isPacked).toBe(false)
  expect(entries.find((one) => one.name === 'dossier.pdf')?.isPacked).toBe(false)
})

test('an issue’s package is the same bytes each time; one that was never issued is not found', async () => {
  const [first, second] = [await packed(0, 'a.zip'), await packed(0, 'b.zip')]
  expect(sha256(readFileSync(first.path))).toBe(sha256(readFileSync(second.path)))
  expect(await gatherPackage(world.store, world.store.tenant, REPAIR, 7, world.at('.'))).toMatchObject({ ok: false })
})
