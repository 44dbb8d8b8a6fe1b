import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { readBounded } from '@/app/api/photos/read-bounded'
import { PersonId, StreamId } from '@/lib/domain/facts/fact'
import { done, refused } from '@/lib/domain/result'
import { PointNo } from '@/lib/domain/specification'
import { attachPhoto } from '@/lib/server/commands/attach-photo'
import { csvLine } from '@/lib/server/commands/csv-line'
import { exportTrace } from '@/lib/server/commands/export-trace'
import { openReviewDossier } from '@/lib/server/commands/open-dossier'
import { openPhoto } from '@/lib/server/commands/open-photo'
import { recordPoint } from '@/lib/server/commands/record-point'
import { drawScene } from '@/test/photo/drawn-photo'
import { factJson } from '@/test/store/facts-for-tests'
import { openWorld, type World } from './world'
import { openedFact, PERMIT } from './world-facts'

const stream = 'repair:R-1'
const ABOUT = {
  id: '019e2222-0000-7000-8000-000000000001',
  stream,
  body: { point: '05', attempt: 1, caption: 'permit board' },
}
const picture = () => drawScene(400, 300).jpeg().toBuffer()

describe('photos and exports', () => {
  let world: World
  beforeAll(async () => {
    world = await openWorld()
  })
  afterAll(() => world.store.remove())

  test('a photo is kept byte for byte, once for the same id, and shown to its own tenant', async () => {
    const bytes = await picture()
    const technician = await world.of('T1')
    const first = await attachPhoto(technician, ABOUT, async () => done(bytes))
    if (!first.ok) throw new Error(first.error.code)
    const again = await attachPhoto(technician, ABOUT, () => Promise.reject(new Error('read again')))
    expect(again).toMatchObject({ ok: true, value: { fact: ABOUT.id, sha256: first.value.sha256 } })
    const original = await openPhoto(technician, { sha256: first.value.sha256, size: 'original' })
    expect(original.ok && Buffer.from(original.value.bytes).equals(bytes)).toBe(true)
    expect(await openPhoto(await world.of('AU'), { sha256: first.value.sha256, size: 'thumb' })).toMatchObject({
      ok: true,
      value: { mediaType: 'image/jpeg' },
    })
    expect(await openPhoto(world.foreign, { sha256: first.value.sha256, size: 'thumb' })).toEqual({
      ok: false,
      error: { code: 'not-found' },
    })
    expect(await openPhoto(technician, { sha256: 'f'.repeat(64), size: 'thumb' })).toEqual({
      ok: false,
      error: { code: 'not-found' },
    })
  })

  test.each([
    ['no bytes', Buffer.alloc(0), 'empty'],
    ['a text', Buffer.from('not a photo at all'), 'unknown-type'],
    ['a cut photo', null, 'damaged'],
  ])('%s is refused with the reason, and nothing is attached', async (_case, bytes, reason) => {
    const before = await world.count()
    const given = bytes ?? (await picture()).subarray(0, 2000)
    const outcome = await attachPhoto(await world.of('T1'), { ...ABOUT, id: undefined }, async () => done(given))
    expect(outcome).toMatchObject({ ok: false, error: { code: 'photo-refused', reason } })
    expect(await world.count()).toBe(before)
  })

  test('bytes are read only for who may attach, and no further than the limit', async () => {
    const unread = () => Promise.reject(new Error('read'))
    expect(await attachPhoto(await world.of('AU'), { ...ABOUT, id: undefined }, unread)).toMatchObject({
      ok: false,
      error: { code: 'not-allowed' },
    })
    expect(await attachPhoto(world.foreign, { ...ABOUT, id: undefined }, unread)).toMatchObject({
      ok: false,
      error: { code: 'not-found' },
    })
    const tooLong = async () => refused({ code: 'photo-refused' as const, reason: 'too-large', detail: '' })
    expect(await attachPhoto(await world.of('T1'), { ...ABOUT, id: undefined }, tooLong)).toMatchObject({
      ok: false,
      error: { reason: 'too-large' },
    })
    const endless = () => new ReadableStream<Uint8Array>({ pull: (control) => control.enqueue(new Uint8Array(1000)) })
    expect(await readBounded(endless(), 10_000)).toBeNull()
    expect((await readBounded(new Response('0123456789').body, 10))?.length).toBe(10)
    expect((await readBounded(null, 10))?.length).toBe(0)
  })

  test('a trace is exported with every use, for readers of the record', async () => {
    const mix = {
      type: 'filler-mix',
      mixNo: '=F1',
      mixedBy: 'T1',
      partA: [{ batch: 'batch:FP-1' }],
      partB: [{ batch: 'batch:FP-1' }],
      proportion: 'whole kit',
      kits: { kind: 'number', digits: 1, scale: 0, unit: 'kits', text: '1' },
      startedAt: '2026-05-12T08:55:00+01:00',
    }
    expect(
      await recordPoint(await world.of('T1'), { stream, body: { point: '05', attempt: 1, record: mix } }),
    ).toMatchObject({ ok: true })
    const trace = await exportTrace(await world.of('AU'), { kind: 'batch', name: 'FP-1' })
    if (!trace.ok) throw new Error(trace.error.code)
    const [heading, ...lines] = trace.value.text.trimEnd().split('\r\n')
    expect(heading).toMatch(/^observed at,repair,line/)
    expect(lines.length).toBeGreaterThan(0)
    expect(lines.every((line) => line.includes(',R-1,') && line.includes('FP-1'))).toBe(true)
    expect(trace.value.text).not.toMatch(/,=F1/)
    expect(await exportTrace(await world.of('AU'), { kind: 'batch', name: 'NONE' })).toEqual({
      ok: false,
      error: { code: 'not-found' },
    })
    expect((await exportTrace(await world.of('AU'), { kind: 'repair', name: 'R-1' })).ok).toBe(true)
    expect((await exportTrace(await world.of('AU'), { kind: 'person', name: 'T1' })).ok).toBe(true)
  })

  test('an export holds no use in a project that the reader may not read, and says how many are left out', async () => {
    const day = { observedAt: '2026-05-01T08:00:00+01:00' }
    const opened = openedFact('R-9')
    const permit = { ...PERMIT, areaAuthority: 'Area hut 9' } as const
    await world.put([
      factJson(
        'project:P-9',
        'project-opened',
        { name: 'Mill', site: 'Mill', utcOffset: '+01:00', owner: 'Another' },
        day,
      ),
      factJson(
        'project:P-9',
        'role-granted',
        { person: PersonId.parse('L1'), role: 'lead', approve: false, from: '2026-05-01' },
        day,
      ),
      { ...opened, body: { ...(opened.body as object), project: 'project:P-9' } },
      factJson(
        'repair:R-9',
        'recorded',
        { point: PointNo.parse('05'), attempt: 1, record: permit },
        { observedBy: 'T1' },
      ),
      factJson('repair:R-9', 'material-used', {
        point: PointNo.parse('05'),
        attempt: 1,
        batch: StreamId.parse('batch:FP-1'),
        amount: '1 kits',
      }),
    ])
    for (const form of [
      { kind: 'batch', name: 'FP-1' },
      { kind: 'person', name: 'T1' },
    ]) {
      const full = await exportTrace(await world.of('L1'), form)
      const part = await exportTrace(await world.of('AU'), form)
      if (!full.ok || !part.ok) throw new Error('refused')
      expect(full.value.text).toContain(',R-9,')
      expect(full.value.text).not.toContain('left out')
      expect(part.value.text).toContain(',R-1,')
      expect(part.value.text).not.toContain(',R-9,')
      expect(part.value.text).toContain('left out: 1 in projects that the reader may not read')
    }
  })

  test('a cell is quoted where it must be, and a formula is made a text', () => {
    expect(csvLine(['a', 'b,c', 'd"e', '=1+1', '-5.2', '+25@7', null, 3])).toBe(
      `a,"b,c","d""e",'=1+1,-5.2,'+25@7,,3\r\n`,
    )
  })

  test('a copy for review is a PDF, and nothing is issued by it', async () => {
    const open = async () => openReviewDossier(await world.of('K'), { repair: 'R-1' })
    // the first signature of a store takes its log key and its certificate into the log, once
    const first = await open()
    if (first.ok) await new Response(first.value.body).arrayBuffer()
    const before = await world.count()
    const file = await open()
    if (!file.ok) throw new Error(file.error.code)
    const bytes = Buffer.from(await new Response(file.value.body).arrayBuffer())
    expect(bytes.length).toBe(file.value.sizeBytes)
    expect(bytes.toString('latin1', 0, 5)).toBe('%PDF-')
    expect(await world.count()).toBe(before)
  })
})
