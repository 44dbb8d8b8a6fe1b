import { expect, test } from 'vitest'
import { traceBatch } from '@/lib/domain/trace/trace-batch'
import { stream } from '../fold/fact-maker'
import { m } from '../fold/small-job-plan'
import { BOTH, IDENTITIES, NOW, twoRepairs, usesOf } from './two-repairs'

test('mass balance: a gap between received and used, wasted and in store is a finding, exact to the gram', () => {
  const { facts } = twoRepairs()
  const trace = traceBatch(facts, stream('batch:RS-884'), usesOf(facts, ...BOTH), IDENTITIES, NOW)
  expect(trace?.balance).toEqual({
    unit: 'kg',
    received: '15.000',
    used: '3.260',
    wasted: '0.140',
    returned: '0.000',
    inStore: '11.500',
    gap: '0.100',
    isFinding: true,
    unweighed: [],
  })
  expect(trace?.uses.map((one) => [one.number, one.into, one.role])).toEqual([
    ['MD-0041', expect.anything(), 'taken'],
    ['MD-0041', 'M1', expect.anything()],
    ['MD-0041', 'M2', expect.anything()],
    ['MD-0042', 'M1', expect.anything()],
    ['MD-0042', 'M2', expect.anything()],
  ])
})

test('mass balance: a batch that nobody counted is not counted, and one counted right has no gap', () => {
  const { facts, make } = twoRepairs()
  expect(traceBatch(facts, stream('batch:HB-2270'), usesOf(facts, ...BOTH), IDENTITIES, NOW)?.balance).toMatchObject({
    used: '1.238',
    inStore: null,
    gap: 'not counted',
    isFinding: false,
  })
  make('batch:RS-884', 'batch-counted', '05-30 08:00', { quantity: m('11.600', 'kg') })
  expect(traceBatch(facts, stream('batch:RS-884'), usesOf(facts, ...BOTH), IDENTITIES, NOW)?.balance).toMatchObject({
    gap: '0.000',
    isFinding: false,
  })
})

test('mass balance: what was returned to the store after the count is in it, an unweighed use is said', () => {
  const { facts, make } = twoRepairs()
  make('batch:RS-884', 'batch-returned', '05-30 08:00', { quantity: m('100', 'g'), from: 'repair:MD-0042' })
  expect(traceBatch(facts, stream('batch:RS-884'), usesOf(facts, ...BOTH), IDENTITIES, NOW)?.balance).toMatchObject({
    inStore: '11.600',
    returned: '0.100',
    gap: '0.000',
  })
  const told = make('repair:MD-0041', 'material-used', '05-12 12:00', {
    point: '14',
    attempt: 1,
    batch: 'batch:RS-884',
    amount: 'a little',
  })
  expect(traceBatch(facts, stream('batch:RS-884'), usesOf(facts, ...BOTH), IDENTITIES, NOW)?.balance).toMatchObject({
    gap: 'not weighed',
    isFinding: true,
    unweighed: [told.id],
  })
})
