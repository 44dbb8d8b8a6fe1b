import { expect, test } from 'vitest'
import { StreamId } from '@/lib/domain/facts/fact'
import { traceBatch } from '@/lib/domain/trace/trace-batch'
import { DEMO_START } from '@/lib/server/demo/demo-time'
import { FACTS, foldDemo, REPAIRS } from './folded-demo'

const uses = REPAIRS.flatMap((number) => foldDemo(number).uses)

function balanceOf(batch: string) {
  return traceBatch(FACTS, StreamId.parse(`batch:${batch}`), uses, [], DEMO_START)?.balance
}

function repairsWith(batch: string): string[] {
  const rows = traceBatch(FACTS, StreamId.parse(`batch:${batch}`), uses, [], DEMO_START)?.uses ?? []
  return [
    ...new Set(rows.filter((row) => row.role !== 'taken' && row.role !== 'refused').map((row) => row.number)),
  ].sort()
}

test('RS-884: received 15.000, used 3.260, waste 0.140, in store 11.500: a gap of 0.100 kg is a finding', () => {
  expect(balanceOf('RS-884')).toMatchObject({ unit: 'kg', isFinding: true })
  expect(
    ['received', 'used', 'wasted', 'inStore', 'gap'].map((name) => Number(balanceOf('RS-884')?.[name as 'gap'])),
  ).toEqual([15, 3.26, 0.14, 11.5, 0.1])
})

test('batches that nobody counted have no gap', () => {
  for (const batch of ['RS-901', 'HB-2270', 'HB-2291', 'FP-118', 'PR-357'])
    expect(balanceOf(batch)).toMatchObject({ gap: 'not counted', isFinding: false })
})

test.each([
  ['RS-884', 'MD-0041 MD-0042'],
  ['RS-901', 'MD-0043'],
  ['HB-2270', 'MD-0041'],
  ['HB-2291', 'MD-0042 MD-0043'],
  ['FP-118', 'MD-0041 MD-0043 MD-0044'],
  ['FP-121', 'MD-0042'],
  ['FP-097', ''],
  ['PR-357', 'MD-0041 MD-0042 MD-0043'],
  ['FB-0616', 'MD-0041 MD-0042'],
  ['PS-0419', 'MD-0044'],
  ['WT-2206', 'MD-0044'],
  ['SB-77', 'MD-0044'],
])('%s went into %s', (batch, repairs) => {
  expect(repairsWith(batch).join(' ')).toBe(repairs)
})

test('FP-097 was refused and is quarantined', () => {
  expect(traceBatch(FACTS, StreamId.parse('batch:FP-097'), uses, [], DEMO_START)?.batch).toMatchObject({
    expiresOn: '2026-04-30',
    isQuarantined: true,
  })
})
