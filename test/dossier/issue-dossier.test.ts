import { createHash } from 'node:crypto'
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { PersonId, StreamId } from '@/lib/domain/facts/fact'
import { demoFacts } from '@/lib/server/demo/demo-facts'
import { DEMO_START } from '@/lib/server/demo/demo-time'
import { issueDossier } from '@/lib/server/dossier/issue-dossier'
import { issueDossierTask } from '@/lib/server/dossier/issue-dossier-task'
import { issuedFile } from '@/lib/server/dossier/issued-file'
import { writeReviewDossier } from '@/lib/server/dossier/write-review-dossier'
import { appendFacts } from '@/lib/server/store/append-facts'
import { loadRepairState } from '@/lib/server/store/load-repair-state'
import type { Store } from '@/lib/server/store/store'
import { openTestStore, type TestStore } from '@/test/store/test-store'
import { readPdf } from './pdf-text'

const REPAIR = StreamId.parse('repair:MD-0042')
const actor = PersonId.parse('tobias-wrenfield')
const order = { repair: REPAIR, purpose: 'final', changes: [] as string[], actor }
const folder = mkdtempSync(join(tmpdir(), 'issue-test-'))
let store: TestStore

beforeAll(async () => {
  store = await openTestStore({ now: DEMO_START })
  const appended = await appendFacts(
    store,
    store.tenant,
    demoFacts().facts.map((one) => one.fact),
    { receivedBy: actor, receivedAt: DEMO_START },
  )
  expect(appended.ok).toBe(true)
})
afterAll(async () => {
  await store.remove()
  rmSync(folder, { recursive: true, force: true })
})

const storedBytes = async (sha256: string): Promise<Buffer> => Buffer.from((await store.photos.read(sha256)) ?? [])
const issues = async () => (await loadRepairState(store, store.tenant, REPAIR))?.issues ?? []

test('a copy for review issues nothing and leaves one whole file', async () => {
  const written = await writeReviewDossier(store, store.tenant, REPAIR, join(folder, 'copy.pdf'))
  expect(written.ok && written.value.pageCount).toBe(readPdf(readFileSync(join(folder, 'copy.pdf'))).pages.length)
  expect(readdirSync(folder)).toEqual(['copy.pdf'])
  expect(await issues()).toEqual([])
})

test('a repair that is not there, or belongs to another tenant, is refused', async () => {
  expect(
    await writeReviewDossier(store, store.tenant, StreamId.parse('repair:MD-9999'), join(folder, 'none.pdf')),
  ).toEqual({ ok: false, error: { code: 'not-found' } })
  expect(await issueDossier(store, 'tenant-b', order)).toEqual({ ok: false, error: { code: 'not-found' } })
})

test('a crash before the fact leaves nothing issued', async () => {
  const broken: Store = {
    ...store,
    photos: {
      ...store.photos,
      put: async () => {
        throw new Error('the disk is full')
      },
    },
  }
  await expect(issueDossier(broken, store.tenant, order)).rejects.toThrow('the disk is full')
  expect(await issues()).toEqual([])
})

test('the first issue is revision 0; its file is stored under the digest that its fact cites', async () => {
  const issued = await issueDossier(store, store.tenant, order)
  if (!issued.ok) throw new Error(issued.error.code)
  expect(issued.value.revision).toBe(0)
  const bytes = await storedBytes(issued.value.sha256)
  expect(createHash('sha256').update(bytes).digest('hex')).toBe(issued.value.sha256)
  expect(bytes).toHaveLength(issued.value.sizeBytes)
  const [issue] = await issues()
  expect(issue?.fact.body).toMatchObject({
    revision: 0,
    purpose: 'final',
    sha256: issued.value.sha256,
    pageCount: readPdf(bytes).pages.length,
    missing: issued.value.missing,
  })
  expect(await issuedFile(store, store.tenant, REPAIR, 0)).toMatchObject({
    sha256: issued.value.sha256,
    fileName: 'MD-0042-rev-0.pdf',
  })
  expect(await issuedFile(store, store.tenant, REPAIR, 1)).toBeNull()
})

test('a later issue must say what changed', async () => {
  expect(await issueDossier(store, store.tenant, order)).toEqual({
    ok: false,
    error: { code: 'changes-missing', supersedes: 0 },
  })
})

test('the next revision lists the earlier one with its digest and what changed, and leaves its file as it was', async () => {
  const [first] = await issues()
  const before = await storedBytes(first?.fact.body.sha256 ?? '')
  store.setNow('2026-05-30T09:00:00+01:00')
  const told: unknown[] = []
  const answer = await issueDossierTask(
    {
      store,
      tenant: store.tenant,
      dataDir: store.dataDir,
      tell: async (change) => {
        told.push(change)
      },
    },
    { repair: REPAIR, purpose: 'final', changes: ['NCR-0008 raised'], person: actor },
  )
  expect(answer).toMatchObject({ revision: 1 })
  expect(told.length).toBeGreaterThan(0)
  const [, second] = await issues()
  const { text, pages } = readPdf(await storedBytes(second?.fact.body.sha256 ?? ''))
  expect(text.replaceAll(' ', '')).toContain(first?.fact.body.sha256)
  expect(pages[0]).toContain('rev 0 of 2026-05-29')
  expect(pages.slice(0, 3).join(' ')).toContain('NCR-0008 raised')
  expect((await storedBytes(first?.fact.body.sha256 ?? '')).equals(before)).toBe(true)
})

test('a record that moves while the file is built is built anew, and refused when it keeps moving', async () => {
  let moves = 0
  const moving: Store = {
    ...store,
    photos: {
      ...store.photos,
      put: async (sha256, source) => {
        moves += 1
        await store.photos.put(sha256, source)
        const id = `0190b000-0000-7000-8000-${String(moves).padStart(12, '0')}`
        const at = '2026-05-30T08:00:00+01:00'
        const noted = await appendFacts(
          store,
          store.tenant,
          [
            {
              v: 1,
              id,
              stream: REPAIR,
              kind: 'repair-held',
              observedAt: at,
              observedBy: actor,
              enteredAt: at,
              enteredBy: actor,
              device: { id: 'desk', clockOffsetMs: 0 },
              body: { state: 'resumed', reason: `looked at again ${moves}` },
            },
          ],
          { receivedBy: actor },
        )
        expect(noted.ok).toBe(true)
      },
    },
  }
  expect(await issueDossier(moving, store.tenant, { ...order, changes: ['looked at again'] })).toEqual({
    ok: false,
    error: { code: 'record-moving', tries: 3 },
  })
  expect(moves).toBe(3)
  expect(await issues()).toHaveLength(2)
})
