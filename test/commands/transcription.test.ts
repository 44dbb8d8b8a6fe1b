import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { done } from '@/lib/domain/result'
import { attachPhoto } from '@/lib/server/commands/attach-photo'
import { checkTranscription } from '@/lib/server/commands/check-transcription'
import { correctRecord } from '@/lib/server/commands/correct-record'
import { recordPoint } from '@/lib/server/commands/record-point'
import { drawScene } from '@/test/photo/drawn-photo'
import { openWorld, type World } from './world'
import { PERMIT } from './world-facts'

const stream = 'repair:R-1'
const at = { point: '05', attempt: 1 }
const SEEN = '2026-05-12T08:30:00+01:00'

describe('a record transcribed from paper', () => {
  let world: World
  let tally: string
  beforeAll(async () => {
    world = await openWorld()
    const bytes = await drawScene(400, 300).jpeg().toBuffer()
    const about = { stream, body: { ...at, caption: 'Scan of a paper tally', scan: {} } }
    const scan = await attachPhoto(await world.of('L1'), about, async () => done(bytes))
    if (!scan.ok) throw new Error(scan.error.code)
    tally = scan.value.sha256
  })
  afterAll(() => world.store.remove())

  const paper = (more: object = {}) => ({ tally, keeper: 'crew office', place: 'file 3', ...more })
  const copy = (more: object = {}, transcribed: object | null = paper()) => ({
    stream,
    body: { ...at, record: PERMIT, ...(transcribed ? { transcribed } : {}) },
    observedAt: SEEN,
    observedBy: 'T1',
    ...more,
  })
  const keep = async (input: object) => recordPoint(await world.of('L1'), input)

  test('names who observed it apart from who enters it', async () => {
    const kept = await keep(copy())
    if (!kept.ok) throw new Error(JSON.stringify(kept.error))
    const answer = await world.store.db.pool.query<{ fact: Buffer }>('select bytes as fact from facts where id = $1', [
      kept.value.fact,
    ])
    expect(JSON.parse(String(answer.rows[0]?.fact))).toMatchObject({
      observedBy: 'T1',
      enteredBy: 'L1',
      observedAt: SEEN,
    })
  })

  test('another observer is refused for what is no copy, and a copy without observer, time or scan', async () => {
    expect(await keep(copy({}, null))).toMatchObject({ error: { code: 'invalid', fields: { observedBy: [/only/] } } })
    expect(await keep(copy({ observedBy: undefined, observedAt: undefined }))).toMatchObject({
      error: { code: 'invalid', fields: { observedBy: [/name on the paper/], observedAt: [/time on the paper/] } },
    })
    expect(await keep(copy({}, paper({ tally: undefined })))).toMatchObject({
      error: { code: 'invalid', fields: { 'body.transcribed.tally': [/scan/] } },
    })
    expect(await keep(copy({}, paper({ checkedBy: 'QI' })))).toMatchObject({
      error: { code: 'invalid', fields: { 'body.transcribed.checkedBy': [/second person/] } },
    })
    expect(await keep(copy({}, paper({ tally: 'f'.repeat(64) })))).toEqual({
      ok: false,
      error: { code: 'scan-missing' },
    })
  })

  test('the observer held a role that records on that day', async () => {
    expect(await keep(copy({ observedBy: 'K' }))).toMatchObject({
      error: { code: 'observer-not-allowed', person: 'K' },
    })
    expect(await keep(copy({ observedBy: 'NOBODY' }))).toMatchObject({ error: { code: 'observer-not-allowed' } })
    expect(
      await keep(copy({ observedAt: '2019-05-12T08:30:00+01:00', late: { reason: 'found', source: 'paper tally' } })),
    ).toMatchObject({ error: { code: 'observer-not-allowed', day: '2019-05-12' } })
  })

  test('a scan answers no demand for a photo', async () => {
    const about = { stream, body: { ...at, caption: 'Scan', demand: 'permit-board', scan: {} } }
    const refused = await attachPhoto(await world.of('L1'), about, async () => done(new Uint8Array()))
    expect(refused).toMatchObject({ error: { code: 'invalid', fields: { 'body.demand': [/no photo/] } } })
  })

  test('a second person checks it, never who entered it, and only as it stands', async () => {
    const kept = await keep(copy())
    if (!kept.ok) throw new Error(kept.error.code)
    const plain = await keep({ stream, body: { ...at, record: PERMIT } })
    if (!plain.ok) throw new Error(plain.error.code)
    const say = async (who: string, more: object = {}) =>
      checkTranscription(await world.of(who), {
        stream,
        body: { ...at, record: kept.value.fact, corrections: [], result: 'agrees', ...more },
      })
    expect(await say('L1')).toEqual({ ok: false, error: { code: 'own-transcription' } })
    expect(await say('QI', { record: plain.value.fact })).toMatchObject({ error: { code: 'invalid' } })
    expect(await say('QI', { point: '06' })).toEqual({ ok: false, error: { code: 'not-found' } })
    expect(await say('QI', { result: 'differs' })).toMatchObject({
      error: { code: 'invalid', fields: { 'body.remark': ['say what differs'] } },
    })
    expect(await say('QI', { result: 'differs', remark: 'permit P-78' })).toMatchObject({ ok: true })
    const corrected = await correctRecord(await world.of('L1'), {
      stream,
      body: {
        target: kept.value.fact,
        changes: [{ path: ['permitNo'], from: 'P-77', to: 'P-78' }],
        reason: 'misread the sheet',
      },
    })
    if (!corrected.ok) throw new Error(corrected.error.code)
    expect(await say('QI')).toMatchObject({ error: { code: 'value-moved' } })
    expect(await say('QI', { corrections: [corrected.value.fact] })).toMatchObject({ ok: true })
  })
})
