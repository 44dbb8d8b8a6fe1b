import { createHash } from 'node:crypto'
import { readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { beforeEach, describe, expect, test } from 'vitest'
import { makeTemporaryStore } from './drawn-photo'

const bytes = Buffer.from('gauge reads 71')
const sha256 = createHash('sha256').update(bytes).digest('hex')

describe('the folder of photos', () => {
  let { folder, store } = makeTemporaryStore()
  beforeEach(() => {
    ;({ folder, store } = makeTemporaryStore())
  })
  const listFiles = () =>
    readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile())

  test('keeps an object under its digest, in one of 256 folders, and gives it back byte for byte', async () => {
    expect(await store.has(sha256)).toBe(false)
    expect(await store.read(sha256)).toBeNull()
    await store.put(sha256, bytes)
    expect(await store.has(sha256)).toBe(true)
    expect(await store.read(sha256)).toEqual(bytes)
    expect(store.path(sha256)).toBe(join(folder, sha256.slice(0, 2), sha256))
    expect(listFiles().map((entry) => entry.name)).toEqual([sha256])
  })

  test('copies a file in', async () => {
    const source = join(makeTemporaryStore().folder, 'photo.jpg')
    writeFileSync(source, bytes)
    await store.put(sha256, { path: source })
    expect(readFileSync(store.path(sha256))).toEqual(bytes)
  })

  test('never overwrites: the same object stored again, or twice at once, stays one file', async () => {
    await store.put(sha256, bytes)
    const before = statSync(store.path(sha256))
    await store.put(sha256, bytes)
    expect(statSync(store.path(sha256))).toMatchObject({ ino: before.ino, mtimeMs: before.mtimeMs })
    const other = Buffer.from('gauge reads 77')
    const otherSha256 = createHash('sha256').update(other).digest('hex')
    const given = await Promise.all(Array.from({ length: 8 }, () => store.add(other)))
    expect(new Set(given)).toEqual(new Set([otherSha256]))
    expect(listFiles()).toHaveLength(2)
    expect(await store.read(otherSha256)).toEqual(other)
  })

  test('throws where the stored object is not what its name says, and leaves it as it is', async () => {
    await store.put(sha256, bytes)
    writeFileSync(store.path(sha256), 'gauge reads 77')
    await expect(store.put(sha256, bytes)).rejects.toThrow('does not match its name')
    await expect(store.add(bytes)).rejects.toThrow('does not match its name')
    expect(readFileSync(store.path(sha256), 'utf8')).toBe('gauge reads 77')
  })

  test('throws for bytes of another digest and for a source that is gone, and leaves nothing behind', async () => {
    await expect(store.put(sha256, Buffer.from('other'))).rejects.toThrow(RangeError)
    await expect(store.put(sha256, { path: join(folder, 'gone.jpg') })).rejects.toThrow('ENOENT')
    expect(await store.has(sha256)).toBe(false)
    expect(listFiles()).toEqual([])
  })

  test.each([
    ['a way out of the folder', '../../../../etc/passwd'],
    ['capital digits', sha256.toUpperCase()],
    ['one digit short', sha256.slice(1)],
    ['nothing', ''],
  ])('takes no name that is not a digest: %s', async (_case, name) => {
    expect(await store.has(name)).toBe(false)
    expect(await store.read(name)).toBeNull()
    expect(() => store.path(name)).toThrow(RangeError)
    await expect(store.put(name, bytes)).rejects.toThrow(RangeError)
    expect(listFiles()).toEqual([])
  })
})
