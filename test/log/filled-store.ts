import { createHash } from 'node:crypto'
import sharp from 'sharp'
import { PersonId, StreamId } from '@/lib/domain/facts/fact'
import { takeInPhoto } from '@/lib/photo/take-in'
import { issueDossier } from '@/lib/server/dossier/issue-dossier'
import { appendFacts } from '@/lib/server/store/append-facts'
import { listRepairs } from '@/lib/server/store/list-repairs'
import { groundFacts, photoFact, repairFacts } from '@/test/store/repair-for-tests'
import type { TestStore } from '@/test/store/test-store'

export const QI = PersonId.parse('QI')
export const REPAIR = StreamId.parse('repair:MD-1')

/** Append or fail. */
export async function appendTo(store: TestStore, facts: readonly unknown[]): Promise<void> {
  const appended = await appendFacts(store, store.tenant, facts, { receivedBy: QI })
  if (!appended.ok) throw new Error(JSON.stringify(appended.error))
}

/** Fill a store with one repair, a photo of it and one issued dossier, and bring its projections up. Gives the digests of what lies in the photo store. */
export async function fillStore(store: TestStore): Promise<{ photo: string; rendition: string; dossier: string }> {
  const bytes = await sharp({ create: { width: 640, height: 480, channels: 3, background: '#888' } })
    .jpeg()
    .toBuffer()
  const limits = { maxBytes: 30_000_000, maxPixels: 100_000_000 }
  const taken = await takeInPhoto({ bytes, store: store.photos, limits })
  if (!taken.ok) throw new Error(taken.error.code)
  const { sha256, sizeBytes, widthPx, heightPx, rendition, thumb, measures } = taken.value
  const fact = photoFact('MD-1', { sha256, dHash: measures.dHash, pHash: measures.pHash })
  const body = fact.body as { photo: object }
  const photo = { ...body.photo, sizeBytes, widthPx, heightPx, rendition, thumb }
  await appendTo(store, [...groundFacts(), ...repairFacts('MD-1'), { ...fact, body: { ...body, photo } }])
  const issued = await issueDossier(store, store.tenant, { repair: REPAIR, purpose: 'final', changes: [], actor: QI })
  if (!issued.ok) throw new Error(issued.error.code)
  await listRepairs(store, store.tenant)
  return {
    photo: createHash('sha256').update(bytes).digest('hex'),
    rendition: rendition.sha256,
    dossier: issued.value.sha256,
  }
}

/** Keep the rows of tables aside; the answer puts them back. */
export async function keepTables(store: TestStore, tables: readonly string[]): Promise<() => Promise<void>> {
  for (const table of tables) await store.db.pool.query(`create table kept_${table} as select * from ${table}`)
  return async () => {
    for (const table of tables) {
      await store.db.pool.query(`delete from ${table}`)
      await store.db.pool.query(`insert into ${table} select * from kept_${table}`)
      await store.db.pool.query(`drop table kept_${table}`)
    }
  }
}
