import { readFileSync } from 'node:fs'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { nodeHasher, openFileSource } from '@/lib/cli/file-source'
import { issueDossier } from '@/lib/server/dossier/issue-dossier'
import { writeReviewDossier } from '@/lib/server/dossier/write-review-dossier'
import { parseTrusted } from '@/lib/verify/trusted'
import { verifyFile } from '@/lib/verify/verify-file'
import { readSealed } from '@/test/dossier/read-sealed'
import { ACTOR, REPAIR, type SealedWorld, sealedWorld } from '@/test/dossier/sealed-world'
import { codesOf } from './signed-by-hand'

let world: SealedWorld
beforeAll(async () => {
  world = await sealedWorld()
})
afterAll(() => world.remove())

async function checkFile(path: string, given: Parameters<typeof parseTrusted>[0] = {}) {
  const trusted = parseTrusted(given)
  if (!trusted.ok) throw new Error(trusted.error.code)
  const source = await openFileSource(path)
  try {
    return await verifyFile(source, { trusted: trusted.value, hasher: nodeHasher })
  } finally {
    await source.close()
  }
}

describe('a dossier as the server makes it', () => {
  test('a copy for review is intact, all verdicts recomputed, photos that the store lacked told', async () => {
    const path = world.at('copy.pdf')
    const written = await writeReviewDossier(world.store, world.store.tenant, REPAIR, path)
    if (!written.ok) throw new Error(written.error.code)
    const answer = await checkFile(path)
    expect(answer.breaks).toEqual([])
    expect(answer).toMatchObject({
      answer: 'intact',
      signer: 'not known',
      about: { kind: 'for review', photoCount: 6 },
    })
    expect(answer.verdicts.total).toBeGreaterThan(100)
    expect(answer.verdicts.agreed).toBe(answer.verdicts.total)
    expect(answer.notProved.map((one) => one.code)).toContain('photos-missing')
    const key = new TextEncoder().encode(answer.about?.vkey)
    expect(await checkFile(path, { key })).toMatchObject({ answer: 'intact', signer: 'known' })
  })

  test('two issues, one after the other: the second shows that the log still holds all that it held at the first', async () => {
    const { store } = world
    const order = { repair: REPAIR, purpose: 'final', changes: [] as string[], actor: ACTOR }
    const first = await issueDossier(store, store.tenant, order)
    const second = await issueDossier(store, store.tenant, { ...order, changes: ['issued again'] })
    if (!first.ok || !second.ok) throw new Error('not issued')
    const [early, late] = [first, second].map((one) => store.photos.path?.(one.value.sha256) ?? '')
    if (!early || !late) throw new Error('not stored')
    expect(await checkFile(early)).toMatchObject({ answer: 'intact', about: { revision: 0 } })
    const checkpoint = readSealed(early).files.get('checkpoint.txt')?.toString() ?? ''
    const answer = await checkFile(late, { checkpoint })
    expect(answer.breaks).toEqual([])
    expect(answer).toMatchObject({ answer: 'intact', signer: 'known', about: { revision: 1, purpose: 'final' } })
    expect(answer.notProved.map((one) => one.code)).not.toContain('checkpoint-consistency')
  })

  test('a byte of a photo changed: the photo is named by its fact', async () => {
    const path = world.at('copy.pdf')
    const file = new Uint8Array(readFileSync(path))
    const at = Buffer.from(file).indexOf('/DCTDecode') + 200
    file[at] = (file[at] ?? 0) ^ 1
    const { sourceOfBytes } = await import('@/lib/verify/byte-source')
    expect(codesOf(await verifyFile(sourceOfBytes(file)))).toEqual(['digest-differs', 'photo-digest'])
  })
})
