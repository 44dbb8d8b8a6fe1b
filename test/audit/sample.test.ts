import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { judgeFactClaim } from '@/app/(work)/audit/read-log'
import type { RecordOf } from '@/lib/domain/records/record'
import type { Actor } from '@/lib/server/auth/actor'
import { openDesk } from '@/lib/server/commands/open-desk'
import type { SampleParams } from '@/lib/server/views/audit-sample-params'
import { type AuditSample, loadAuditSample } from '@/lib/server/views/audit-sample-view'
import { openPreparedWorld, type Prepared } from '@/test/auth/prepared-world'
import { factJson } from '@/test/store/facts-for-tests'
import { measured } from '@/test/store/measured-for-tests'

const MARKS = ['A-12', 'A-3', 'A-6', 'A-9', 'B-12', 'B-3', 'B-6', 'B-9']
const hardness = (from: number): RecordOf<'hardness'> => ({
  type: 'hardness',
  scale: 'ShoreD',
  grid: { stations: [{ name: 'A', fromLeak: measured('0', 'mm') as never }], clocks: ['12'] },
  readings: MARKS.map((mark, at) => ({ mark, reading: measured(String(from + at), 'ShoreD') as never })),
  takenAt: '2026-05-12T08:30:00+01:00',
  instrument: 'instrument:HD-1' as never,
})
const at = { point: '06' as never, attempt: 1 }
const when = (time: string) => ({ observedAt: `2026-05-12T${time}:00+01:00` })

describe('a sample of readings', () => {
  let world: Prepared
  const draw = async (params: SampleParams, actor?: Actor): Promise<AuditSample> => {
    const who = actor ?? (await world.as('auditor'))
    const desk = await openDesk(who)
    const sample = await loadAuditSample({ desk, actor: who, roles: [] }, params, '+01:00')
    if (!sample.ok) throw new Error(sample.error.code)
    return sample.value
  }
  const drawn = async (params: SampleParams, actor?: Actor) => {
    const sample = await draw(params, actor)
    if (!sample.draw) throw new Error(JSON.stringify(sample.faults))
    return sample.draw
  }
  beforeAll(async () => {
    world = await openPreparedWorld()
    await world.put([
      factJson(
        'instrument:HD-1',
        'certificate-recorded',
        { certificate: 'K-17', calibratedOn: '2026-01-10', dueOn: '2027-01-10' },
        { observedAt: '2026-05-01T09:00:00+01:00' },
      ),
      factJson(
        'instrument:HD-1',
        'check-made',
        {
          coverage: 'full scale',
          reference: measured('80', 'ShoreD') as never,
          read: measured('81', 'ShoreD') as never,
          tolerance: measured('2', 'ShoreD') as never,
          result: 'within',
        },
        when('08:15'),
      ),
      factJson(
        'repair:R-1',
        'recorded',
        { ...at, record: hardness(70) },
        { ...when('08:30'), observedBy: 'L1', enteredBy: 'L1' },
      ),
    ])
  })
  afterAll(() => world.store.remove())

  test('the population is what the filters leave, and the draw is the seed’s', async () => {
    const all = await drawn({ seed: 'seven', n: '100' })
    const permits = await drawn({ seed: 'seven', n: '100', point: '05' })
    expect(permits.readingCount).toBe(2)
    expect(all.readingCount).toBe(2 + MARKS.length)
    expect(new Set(all.lines.map((one) => one.number)).size).toBe(all.readingCount)
    const ours = await drawn({ seed: 'seven', n: '3', point: '06', repair: 'R-1' })
    expect(ours.readingCount).toBe(MARKS.length)
    expect(ours.lines).toHaveLength(3)
    expect((await drawn({ seed: 'seven', n: '3', point: '06', repair: 'R-1' })).lines).toEqual(ours.lines)
    const others = await Promise.all(['one', 'two', 'three'].map((seed) => drawn({ seed, n: '3', point: '06' })))
    expect(new Set(others.map((one) => one.lines.map((line) => line.number).join())).size).toBeGreaterThan(1)
    expect((await drawn({ seed: 's', repair: 'R-2' })).readingCount).toBe(0)
    expect((await drawn({ seed: 's', from: '2026-05-13' })).readingCount).toBe(0)
    expect((await drawn({ seed: 's', to: '2026-05-12' })).readingCount).toBe(all.readingCount)
  })

  test('numbers follow the marks in order of the record, and the record is proved to stand in the log', async () => {
    const { lines } = await drawn({ seed: 'x', n: '8', point: '06' })
    for (const line of lines) {
      expect(line.keyed).toContain(String(70 + line.number))
      expect(line.place).toContain(MARKS[line.number] ?? 'none')
      const claim = { bytes: line.bytes, leaf: line.leaf, ...line.inLog }
      expect(judgeFactClaim(claim)).toBe('included')
      expect(judgeFactClaim({ ...claim, bytes: line.bytes.replace('ShoreD', 'ShoreA') })).toBe('digest-differs')
      expect(judgeFactClaim({ ...claim, index: claim.index - 1 })).toBe('not-included')
    }
  })

  test('the chain names instrument, certificate of the day and check, and says what is missing', async () => {
    const [line] = (await drawn({ seed: 'x', n: '1', point: '06' })).lines
    const told = Object.fromEntries(
      (line?.chain ?? []).map((one) => [one.title, `${one.state}: ${one.lines.map((each) => each.text).join('; ')}`]),
    )
    expect(told).toMatchObject({
      Instrument: 'there: HD-1, durometer',
      'Certificate that day': 'there: K-17, to 2027-01-10',
      'Check after': 'missing: none on record',
      Person: 'there: Person L1, lead',
      'Qualification that day': 'missing: none on record',
      'Photos at the point': 'not asked: none; the plan asks for none',
      'Signatures over the record': 'missing: none covers it',
    })
    expect(told['Check before']).toMatch(/^there: 81 Shore D on 80 Shore D ± 2 Shore D, full scale: within/)
    expect(told.Release).toMatch(/^missing: none by inspector, client/)
  })

  test('a point with photos and a release shows them; the party that did not release is named', async () => {
    const [line] = (await drawn({ seed: 'x', n: '1', point: '05' })).lines
    const step = (title: string) => line?.chain.find((one) => one.title === title)
    expect(step('Instrument')).toMatchObject({ state: 'missing' })
    expect(step('Photos at the point')?.lines.map((one) => one.photo)).toContain('a'.repeat(64))
    expect(step('Release')?.lines.map((one) => one.text)).toEqual([
      expect.stringMatching(/^inspector, Person QI: /),
      'none by crew',
    ])
  })

  test('the same seed and size give the same draw after the log has grown', async () => {
    const before = await draw({ seed: 'again', n: '4' })
    const size = String(before.asked.size)
    await world.put([factJson('repair:R-1', 'recorded', { ...at, attempt: 2, record: hardness(50) }, when('08:50'))])
    const repeated = await drawn({ seed: 'again', n: '4', size })
    expect(repeated.lines.map((one) => [one.number, one.fact, one.place])).toEqual(
      before.draw?.lines.map((one) => [one.number, one.fact, one.place]),
    )
    expect((await drawn({ seed: 'again', n: '4' })).readingCount).toBe((before.draw?.readingCount ?? 0) + MARKS.length)
  })

  test('a correction shows beside what was keyed', async () => {
    const first = (await drawn({ seed: 'x', n: '8', point: '06', to: '2026-05-12' })).lines.find(
      (one) => one.number === 0,
    )
    if (!first) throw new Error('not drawn')
    await world.put([
      factJson(
        'repair:R-1',
        'corrected',
        {
          target: first.fact as never,
          changes: [
            { path: ['readings', 0, 'reading', 'digits'], from: 70, to: 76 },
            { path: ['readings', 0, 'reading', 'text'], from: '70', to: '76' },
          ],
          reason: 'digits swapped on keying',
        },
        { ...when('08:55'), observedBy: 'L1', enteredBy: 'L1' },
      ),
    ])
    const after = (await drawn({ seed: 'x', n: '16', point: '06' })).lines.find(
      (one) => one.fact === first.fact && one.place === first.place,
    )
    expect(after).toMatchObject({ keyed: '70 Shore D', corrected: '76 Shore D' })
  })

  test('what cannot be asked is said and nothing is drawn; another tenant has nothing to draw from', async () => {
    const wrong = await draw({ seed: 'a\nb', n: '0', size: '999999', from: 'today' })
    expect(wrong.draw).toBeNull()
    expect(wrong.faults.map((one) => one.field).sort()).toEqual(['from', 'n', 'seed', 'size'])
    expect((await drawn({ seed: 'x' }, world.foreign)).readingCount).toBe(0)
  })
})
