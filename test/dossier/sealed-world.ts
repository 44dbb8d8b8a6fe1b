import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { PersonId, StreamId } from '@/lib/domain/facts/fact'
import { ofKind } from '@/lib/domain/fold/order-facts'
import { pictureEngine } from '@/lib/photo/picture-engine'
import { demoFacts } from '@/lib/server/demo/demo-facts'
import { DEMO_START } from '@/lib/server/demo/demo-time'
import { appendFacts } from '@/lib/server/store/append-facts'
import { openTestStore, type TestStore } from '@/test/store/test-store'

export const REPAIR = StreamId.parse('repair:MD-0042')
export const ACTOR = PersonId.parse('tobias-wrenfield')
const PHOTOS = 6

/** A store with the demonstration's facts, the bytes of some of a repair's photos, and a folder to write into. */
export type SealedWorld = { store: TestStore; at: (name: string) => string; remove(): Promise<void> }

/** Open one. The demonstration describes its photos; six of the repair's get bytes here, the others are missing from the store. */
export async function sealedWorld(): Promise<SealedWorld> {
  const folder = mkdtempSync(join(tmpdir(), 'sealed-test-'))
  const store = await openTestStore({ now: DEMO_START })
  const facts = await withPictures(store)
  const appended = await appendFacts(store, store.tenant, facts, { receivedBy: ACTOR, receivedAt: DEMO_START })
  if (!appended.ok) throw new Error(JSON.stringify(appended.error))
  return {
    store,
    at: (name) => join(folder, name),
    async remove() {
      await store.remove()
      rmSync(folder, { recursive: true, force: true })
    },
  }
}

async function withPictures(store: TestStore): Promise<unknown[]> {
  const facts = demoFacts().facts.map((one) => one.fact)
  const ids = new Map(
    ofKind(facts, 'photo-attached')
      .filter((fact) => fact.stream === REPAIR)
      .slice(0, PHOTOS)
      .map((fact, index) => [fact.id, index] as const),
  )
  return Promise.all(
    facts.map(async (fact) => {
      const index = ids.get(fact.id)
      if (index === undefined || fact.kind !== 'photo-attached') return fact
      const bytes = await pictureEngine({
        create: { width: 80 + index, height: 60, channels: 3, background: { r: 40 * index, g: 120, b: 90 } },
      })
        .jpeg()
        .toBuffer()
      const sha256 = await store.photos.add?.(bytes)
      const { photo } = fact.body
      const rendition = { ...photo.rendition, sha256, sizeBytes: bytes.length, widthPx: 80 + index, heightPx: 60 }
      return { ...fact, body: { ...fact.body, photo: { ...photo, rendition } } }
    }),
  )
}
