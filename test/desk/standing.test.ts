import { describe, expect, test } from 'vitest'
import { StreamId } from '@/lib/domain/facts/fact'
import type { BatchState } from '@/lib/domain/fold/store-states'
import { measured } from '@/lib/domain/reading'
import { batchStanding, labelReadOf } from '@/lib/server/views/batch-words'
import { nextNumberOf } from '@/lib/server/views/nonconformance-list-view'

const received: BatchState['received'] = {
  number: 'RS-884',
  role: 'resin',
  product: 'laminating resin A',
  expiresOn: '2026-11-30',
  quantity: measured('15.000', 'kg'),
}
const batch = (over: Partial<BatchState>): BatchState => ({
  stream: StreamId.parse('batch:RS-884'),
  number: 'RS-884',
  received,
  expiresOn: '2026-11-30',
  isQuarantined: false,
  quarantines: [],
  recalled: null,
  ...over,
})

describe('how a batch stands on a day', () => {
  test.each([
    ['the day before its use-by day', '2026-11-29', 'expires soon'],
    ['on its use-by day it is still in date', '2026-11-30', 'expires soon'],
    ['the day after', '2026-12-01', 'expired'],
    ['thirty-one days ahead', '2026-10-30', 'in date'],
    ['thirty days ahead', '2026-10-31', 'expires soon'],
  ])('%s', (_case, today, standing) => {
    expect(batchStanding(batch({}), today)).toBe(standing)
  })

  test('no day stated is neither in date nor expired', () => {
    expect(batchStanding(batch({ expiresOn: null }), '2026-05-29')).toBe('no expiry stated')
  })

  test('a quarantine outranks the date', () => {
    expect(batchStanding(batch({ isQuarantined: true }), '2026-05-29')).toBe('quarantined')
  })
})

describe('how a label came in', () => {
  test.each([
    ['typed when no text was kept', {}, 'typed'],
    ['scanned when it holds batch and use-by day', { label: '(01)09521234000013(17)261130(10)RS-884' }, 'scanned'],
    [
      'completed by hand when it lacks the batch',
      { label: '(01)09521234000013(17)261130' },
      'scanned, completed by hand',
    ],
    [
      'completed by hand when it lacks the use-by day that was keyed',
      { label: '(01)09521234000013(10)RS-884' },
      'scanned, completed by hand',
    ],
    [
      'scanned when neither label nor entry states a day',
      { label: '(01)09521234000013(10)FB-0616', expiresOn: null },
      'scanned',
    ],
    [
      'completed by hand when it cannot be read',
      { label: 'RESIN A / LOT RS-884' },
      'label text kept, completed by hand',
    ],
  ])('%s', (_case, over, words) => {
    expect(labelReadOf({ ...received, ...over })).toBe(words)
  })
})

describe('the next number of a nonconformance', () => {
  test.each([
    ['the first', [], 'NCR-0001'],
    ['after the highest, in its shape', ['NCR-0007', 'NCR-0009', 'NCR-0008'], 'NCR-0010'],
    ['with another head', ['MD-99'], 'MD-100'],
    ['numbers without digits are passed over', ['first one'], 'NCR-0001'],
  ])('%s', (_case, used, next) => {
    expect(nextNumberOf(used)).toBe(next)
  })
})
