import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import type { FactId } from '@/lib/domain/facts/fact'
import { openDesk } from '@/lib/server/commands/open-desk'
import { loadTrailView } from '@/lib/server/views/trail-view'
import { openWorld, type World } from '@/test/commands/world'
import { PERMIT } from '@/test/commands/world-facts'
import { factJson } from '@/test/store/facts-for-tests'

const at = { point: '05' as never, attempt: 1 }
const RECORD = '019e4444-0000-7000-8000-000000000001'

describe('the trail of a repair', () => {
  let world: World
  const load = async (person: string) => {
    const actor = await world.of(person)
    const desk = await openDesk(actor)
    const view = await loadTrailView({ desk, actor, roles: actor.rolesOn('any', desk.today(null)) }, 'R-1')
    if (!view) throw new Error('no trail')
    return view
  }
  const told = async () => Object.fromEntries((await load('AU')).told.map((one) => [one.title, one.lines]))
  beforeAll(async () => {
    world = await openWorld()
  })
  afterAll(() => world.store.remove())

  test('says of every kind that there is none, before there is one', async () => {
    const { told } = await load('AU')
    expect(told.map((one) => one.title)).toEqual([
      'Late entries',
      'Corrections',
      'Transcriptions from paper, and their checks',
      'Clock faults',
      'Reused photos, and photos without their original claims',
      'Refusals, falls, waivers, events and conflicts',
    ])
    const bare = told.filter((one) => /^(Corrections|Clock faults|Reused photos)/.test(one.title))
    expect(bare.map((one) => one.lines)).toEqual([[], [], []])
    expect(told.every((one) => one.none !== '')).toBe(true)
  })

  test('lists late entries with their reason, corrections, a wrong clock and what was held back, each once', async () => {
    const late = { reason: 'no signal in the gallery', source: 'paper tally' as const }
    await world.put([
      {
        ...factJson('repair:R-1', 'recorded', { ...at, record: PERMIT as never }),
        ...{ id: RECORD, observedAt: '2026-05-12T05:00:00+01:00', enteredAt: '2026-05-12T08:12:00+01:00', late },
        device: { id: 'tab-9', clockOffsetMs: 64_000 },
      } as ReturnType<typeof factJson>,
      factJson(
        'repair:R-1',
        'corrected',
        {
          target: RECORD as FactId,
          changes: [{ path: ['permitNo'], from: 'P-77', to: 'P-78' }],
          reason: 'digit misread',
        },
        { observedAt: '2026-05-12T08:20:00+01:00' },
      ),
      factJson(
        'repair:R-1',
        'recorded',
        { ...at, record: PERMIT as never },
        { observedAt: '2026-05-12T06:00:00+01:00' },
      ),
    ])
    const lists = await told()
    expect(lists['Late entries']?.map((one) => one.text)).toEqual(
      expect.arrayContaining([
        'recorded: permit, isolation and pressure state, repair R-1, point 05 attempt 1: keyed 3 h 12 min after it was observed, by Person QI: no signal in the gallery (from paper tally).',
        'recorded: permit, isolation and pressure state, repair R-1, point 05 attempt 1: received 3 h 0 min after it was keyed on tab-1.',
      ]),
    )
    expect(lists.Corrections).toHaveLength(1)
    expect(lists.Corrections?.[0]?.text).toContain('P-77 corrected to P-78')
    expect(lists['Clock faults']?.map((one) => one.text)).toEqual(['Clock of tab-9 was 1 min 4 s fast at 1 entry.'])
    const rest = lists['Refusals, falls, waivers, events and conflicts'] ?? []
    expect(rest.some((one) => /^(Late entry|Corrected by|Clock of)/.test(one.text))).toBe(false)
  })

  test('every line shows observed, entered and received, who, the device and its clock; only who may audit is led on', async () => {
    const view = await load('AU')
    const line = view.lines.find((one) => one.id === RECORD)
    expect(line).toMatchObject({
      observedAt: '2026-05-12T05:00:00+01:00',
      enteredAt: '2026-05-12T08:12:00+01:00',
      receivedAt: '2026-05-12T09:00:00+01:00',
      receivedBy: 'Person QI',
      device: 'tab-9',
      clockErrorMs: 64_000,
    })
    expect(view.mayAudit).toBe(true)
    expect((await load('T1')).mayAudit).toBe(false)
  })
})
