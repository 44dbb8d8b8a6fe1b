import { expect, test } from 'vitest'
import { claimedTime, showClaimedTime } from '@/lib/domain/claimed-time'

test('a time that a file claims keeps its own offset, else takes the one claimed beside it, else has none', () => {
  expect(claimedTime({ takenAt: null, offset: '+01:00' })).toBeNull()
  expect(showClaimedTime({ takenAt: null, offset: null })).toBeNull()
  for (const [takenAt, offset, shown] of [
    ['2026-05-20T08:14:00+02:00', '+01:00', '2026-05-20 08:14:00 +02:00'],
    ['2026-05-20T08:14:00Z', null, '2026-05-20 08:14:00 Z'],
    ['2026-05-20T08:14:00', '+01:00', '2026-05-20 08:14:00 +01:00'],
    ['2026-05-20T08:14:00', null, '2026-05-20 08:14:00 offset unknown'],
  ] as const)
    expect(showClaimedTime({ takenAt, offset })).toBe(shown)
})
