import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import type { StreamId } from '@/lib/domain/facts/fact'
import { correctRecord } from '@/lib/server/commands/correct-record'
import { issuePlan } from '@/lib/server/commands/issue-plan'
import { issueSpecification } from '@/lib/server/commands/issue-specification'
import { liftQuarantine } from '@/lib/server/commands/lift-quarantine'
import { openDesk } from '@/lib/server/commands/open-desk'
import { openRepair } from '@/lib/server/commands/open-repair'
import { quarantineBatch } from '@/lib/server/commands/quarantine-batch'
import { recordPoint } from '@/lib/server/commands/record-point'
import { savePlanDraft } from '@/lib/server/commands/save-plan-draft'
import { saveSpecificationDraft } from '@/lib/server/commands/save-specification-draft'
import { waiveHold } from '@/lib/server/commands/waive-hold'
import { openWorld, PASSWORD, type World } from './world'
import { openedFact, PERMIT, PLAN, SPECIFICATION } from './world-facts'

const stream = 'repair:R-1' as StreamId
const second = (person: string, password = PASSWORD) => ({ by: 'password', person, password })

describe('records, revisions and bars', () => {
  let world: World
  beforeAll(async () => {
    world = await openWorld()
  })
  afterAll(() => world.store.remove())

  test('who entered a record corrects it, from the value that stands', async () => {
    const kept = await recordPoint(await world.of('L1'), { stream, body: { point: '05', attempt: 1, record: PERMIT } })
    if (!kept.ok) throw new Error(kept.error.code)
    const correct = async (person: string, from: unknown, to: unknown, path: string[] = ['permitNo']) =>
      correctRecord(await world.of(person), {
        stream,
        body: { target: kept.value.fact, changes: [{ path, from, to }], reason: 'digits swapped' },
      })
    expect(await correct('QI', 'P-77', 'P-78')).toEqual({ ok: false, error: { code: 'not-own-entry' } })
    expect(await correct('L1', 'P-99', 'P-78')).toEqual({ ok: false, error: { code: 'value-moved', path: 'permitNo' } })
    expect(await correct('L1', 'isolated', 'asleep', ['state'])).toMatchObject({
      ok: false,
      error: { code: 'invalid' },
    })
    expect(await correct('L1', 'P-77', 'P-78')).toMatchObject({ ok: true })
    expect(await correct('L1', 'P-77', 'P-79')).toEqual({ ok: false, error: { code: 'value-moved', path: 'permitNo' } })
    const state = await (await openDesk(await world.of('L1'))).stateOf(stream)
    expect(state?.points[0]?.current.records[0]).toMatchObject({
      record: { permitNo: 'P-78' },
      fact: { body: { record: { permitNo: 'P-77' } } },
    })
  })

  test('a client waives its own right in its own name, before the step', async () => {
    const waive = async (person: string, point: string, by = person) =>
      waiveHold(await world.of(person), {
        stream,
        body: { point, attempt: 1, party: 'client', by, writing: 'letter of 05-11' },
      })
    expect(await waive('K', '06', 'L1')).toEqual({ ok: false, error: { code: 'not-own-role' } })
    expect(await waive('K', '19')).toMatchObject({ ok: false, error: { code: 'not-decided', why: 'not-a-right' } })
    expect(await waive('K', '06')).toMatchObject({ ok: true })
  })

  test('a repair opens in a project that is there, under revisions that were issued', async () => {
    const lead = await world.of('L1')
    const body = openedFact('R-7').body as Record<string, unknown>
    const open = (more: object) => openRepair(lead, { stream: 'repair:R-7', body: { ...body, ...more } })
    expect(await open({ project: 'project:NONE' })).toEqual({ ok: false, error: { code: 'not-found' } })
    expect(await open({ plan: 'plan:NONE' })).toEqual({ ok: false, error: { code: 'not-found' } })
    await saveSpecificationDraft(await world.of('E'), { stream: 'specification:S-9', body: { body: SPECIFICATION } })
    expect(await open({ specification: 'specification:S-9' })).toMatchObject({
      ok: false,
      error: { code: 'not-decided', why: 'not-issued' },
    })
    expect(await open({})).toMatchObject({ ok: true })
    expect(await open({})).toEqual({ ok: false, error: { code: 'exists-already', stream: 'repair:R-7' } })
  })

  test('an issued plan is free of circles and leaves no draft behind', async () => {
    const engineer = await world.of('E')
    const [first, ...rest] = PLAN.points
    const circle = {
      ...PLAN,
      points: [first, ...rest.map((point) => (point.no === '06' ? { ...point, blocks: ['05'] } : point))],
    }
    expect(await issuePlan(engineer, { stream: 'plan:ITP-9', changes: 'first issue' })).toEqual({
      ok: false,
      error: { code: 'not-found' },
    })
    expect(await savePlanDraft(engineer, { stream: 'plan:ITP-9', body: { body: circle } })).toMatchObject({ ok: true })
    expect(await issuePlan(engineer, { stream: 'plan:ITP-9', changes: 'first issue' })).toEqual({
      ok: false,
      error: { code: 'blocks-form-a-cycle', cycle: ['05', '06', '05'] },
    })
    await savePlanDraft(engineer, { stream: 'plan:ITP-9', body: { body: PLAN } })
    expect(
      await issuePlan(engineer, {
        stream: 'plan:ITP-9',
        changes: 'first issue',
        heads: [{ stream: 'plan:ITP-9', length: 1 }],
      }),
    ).toMatchObject({ ok: false, error: { code: 'heads-moved' } })
    expect(await issuePlan(engineer, { stream: 'plan:ITP-9', changes: 'first issue' })).toMatchObject({ ok: true })
    expect(await issuePlan(engineer, { stream: 'plan:ITP-9', changes: 'again' })).toEqual({
      ok: false,
      error: { code: 'draft-missing' },
    })
  })

  test('an inspector issues only with the right to approve and a second person', async () => {
    const issue = async (person: string, more: object = {}) =>
      issueSpecification(await world.of(person), { stream: 'specification:S-9', changes: 'first issue', ...more })
    expect(await issue('QI', { second: second('QJ') })).toMatchObject({ ok: false, error: { code: 'not-allowed' } })
    expect(await issue('QJ')).toEqual({ ok: false, error: { code: 'second-person-missing' } })
    expect(await issue('QJ', { second: second('QJ') })).toEqual({ ok: false, error: { code: 'second-person-missing' } })
    expect(await issue('QJ', { second: second('QI', 'wrong') })).toEqual({
      ok: false,
      error: { code: 'password-wrong' },
    })
    expect(await issue('QJ', { second: second('T1') })).toMatchObject({ ok: false, error: { code: 'not-allowed' } })
    expect(await issue('QJ', { second: second('QI') })).toMatchObject({ ok: true })
  })

  test('a quarantine is lifted by two persons, both with the right', async () => {
    const lift = async (person: string, other: string, password = PASSWORD) =>
      liftQuarantine(await world.of(person), {
        stream: 'batch:FP-1',
        reason: 'label found',
        second: second(other, password),
      })
    expect(await lift('QI', 'QJ')).toMatchObject({ ok: false, error: { code: 'not-decided', why: 'not-quarantined' } })
    await quarantineBatch(await world.of('S'), { stream: 'batch:FP-1', body: { reason: 'label torn' } })
    expect(await lift('QI', 'QI')).toEqual({ ok: false, error: { code: 'second-person-missing' } })
    expect(await lift('QI', 'QJ', 'wrong')).toEqual({ ok: false, error: { code: 'password-wrong' } })
    expect(await lift('QI', 'S')).toMatchObject({ ok: false, error: { code: 'not-allowed' } })
    expect(await lift('QI', 'QJ')).toMatchObject({ ok: true })
    const facts = await (await openDesk(await world.of('QI'))).factsOf('batch:FP-1' as StreamId)
    expect(facts?.at(-1)).toMatchObject({ kind: 'quarantine-lifted', observedBy: 'QI', body: { second: 'QJ' } })
  })
})
