import { expect, test } from 'vitest'
import type { OutboxEntry } from '@/lib/capture/outbox/outbox-entry'
import { numbersHere, openedHere } from '@/lib/capture/site/opened-here'
import { captureOnSite, stateOnSite } from '@/lib/capture/site/site-state'
import type { ProjectPack } from '@/lib/domain/capture/project-pack'
import { PersonId, streamKind, streamOf } from '@/lib/domain/facts/fact'
import { demoFacts } from '@/lib/server/demo/demo-facts'
import { waitingEntry } from '../outbox/waiting-entry'

const all = demoFacts().facts.map((one) => one.fact)
const PROJECT = streamOf('project', 'QDM-SHAFT-2')
const DEVICE = 'device-1'
const AT = '2026-05-29T08:00:00+01:00'
const NOW_MS = Date.parse('2026-05-29T09:00:00+01:00')
const like = all.find((one) => one.kind === 'repair-opened' && one.stream === 'repair:MD-0042')
if (like?.kind !== 'repair-opened') throw new Error('the demonstration has no such repair')
const opening = like.body

const block = { device: streamOf('device', DEVICE), project: PROJECT, prefix: 'MD-', digits: 4, from: 401, to: 404 }
const pack: ProjectPack = {
  v: 1,
  tenant: 'demo',
  person: PersonId.parse('tobias-wrenfield'),
  roles: ['inspector'],
  project: PROJECT,
  title: 'Shaft 2',
  takenAt: AT,
  utcOffset: '+01:00',
  clockKind: 'demo',
  lateAfterMinutes: 15,
  blocks: [block],
  taken: ['MD-0402'],
  facts: all.filter((one) => one.stream === PROJECT || /^(specification|plan)-issued$/.test(one.kind)),
  stores: all.filter((one) => ['batch', 'instrument', 'person'].includes(streamKind(one.stream))),
  digests: {},
}

function entry(
  no: number,
  command: OutboxEntry['command'],
  number: string,
  body: unknown,
  more: Partial<OutboxEntry> = {},
): OutboxEntry {
  return waitingEntry({
    id: `019e5a6b-1de6-74e6-a47b-${String(no).padStart(12, '0')}`,
    tenant: 'demo',
    person: 'tobias-wrenfield',
    seq: no,
    command,
    input: {
      stream: `repair:${number}`,
      body,
      observedAt: AT,
      enteredAt: AT,
      device: { id: DEVICE, clockOffsetMs: null },
    },
    capturedAt: NOW_MS,
    madeOffline: true,
    ...more,
  })
}

const opened = entry(1, 'open-repair', 'MD-0401', { ...opening, number: 'MD-0401' })

test('a repair that was opened here has its points, limits, stores and choices at once', () => {
  const [one, ...others] = openedHere([pack], [opened])
  if (!one) throw new Error('no pack')
  expect(others).toEqual([])
  expect(one).toMatchObject({
    number: 'MD-0401',
    stream: 'repair:MD-0401',
    person: 'tobias-wrenfield',
    roles: ['inspector'],
  })
  const { state, names } = stateOnSite(one, [opened], NOW_MS)
  expect(state.opened.body.line).toBe(opening.line)
  const plan = all.findLast((fact) => fact.kind === 'plan-issued' && fact.stream === opening.plan)
  expect(state.points.map((point) => point.no)).toEqual(
    plan?.kind === 'plan-issued' ? plan.body.body.points.map((point) => point.no) : [],
  )
  expect(state.specification?.body.number).toBe('QP-MD-12')
  expect(names[PersonId.parse('tobias-wrenfield')]).toBe('Tobias Wrenfield')
  const capture = captureOnSite(one, [opened], NOW_MS, { point: '05', attempt: 1, correcting: null })
  expect(capture?.batches.length).toBeGreaterThan(3)
  expect(capture?.instruments.some((choice) => choice.label.startsWith('SM-02'))).toBe(true)
})

test('what is captured for it afterwards is in its state, and what it names is judged as in the record', () => {
  const record = all.find(
    (one) => one.kind === 'recorded' && one.stream === like.stream && one.body.record.type === 'hardness',
  )
  if (record?.kind !== 'recorded') throw new Error('no hardness')
  const captured = entry(2, 'record-point', 'MD-0401', record.body)
  const entries = [opened, captured]
  const [one] = openedHere([pack], entries)
  if (!one) throw new Error('no pack')
  const { state, unsent } = stateOnSite(one, entries, NOW_MS)
  const point = state.points.find((at) => at.no === record.body.point)
  expect(point?.attempts[0]?.records.map((at) => at.fact.id)).toEqual([captured.id])
  expect([...unsent]).toEqual([captured.id])
  expect(one.facts.some((fact) => fact.stream === 'instrument:HD-03')).toBe(true)
  expect(one.facts.some((fact) => fact.stream === 'batch:FP-118')).toBe(false)
})

test('it stays usable when it was sent, or refused, and goes when it is set aside or the project is not here', () => {
  const numbers = (more: Partial<OutboxEntry>) => openedHere([pack], [{ ...opened, ...more }]).map((one) => one.number)
  expect(numbers({ state: 'sent' })).toEqual(['MD-0401'])
  expect(numbers({ state: 'refused' })).toEqual(['MD-0401'])
  expect(numbers({ state: 'set aside' })).toEqual([])
  expect(openedHere([], [opened])).toEqual([])
  expect(
    stateOnSite(
      openedHere([pack], [{ ...opened, state: 'refused' }])[0] as never,
      [{ ...opened, state: 'refused' }],
      NOW_MS,
    ).state.number,
  ).toBe('MD-0401')
})

test('a number is left until the record, an entry, even one set aside, or another person of this device bears it', () => {
  expect(numbersHere(pack, DEVICE, [], [])).toEqual(['MD-0401', 'MD-0403', 'MD-0404'])
  expect(numbersHere(pack, DEVICE, [opened], [])).toEqual(['MD-0403', 'MD-0404'])
  expect(numbersHere(pack, DEVICE, [{ ...opened, state: 'set aside' }], ['MD-0403'])).toEqual(['MD-0404'])
  expect(numbersHere(pack, 'device-2', [], [])).toEqual([])
})
