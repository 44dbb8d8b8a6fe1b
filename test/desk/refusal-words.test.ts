import { expect, test } from 'vitest'
import { wordsOf } from '@/app/_ui/refusal-note'

test('a refusal tells its times as they are shown everywhere, not as they are stored', () => {
  expect(wordsOf({ code: 'key-ended', endedAt: '2026-05-27T09:12:00+01:00' }).lines).toEqual([
    'Since 2026-05-27 09:12 +01:00 it signs nothing. Sign again before the server, or set up a new key.',
  ])
  const misdated = wordsOf({
    code: 'decision-misdated',
    decidedAt: '2026-05-27T09:05:00+01:00',
    notBefore: '2026-05-27T09:12:30+01:00',
  })
  expect(misdated.lines.join(' ')).toContain('It says 2026-05-27 09:05 +01:00;')
  expect(misdated.lines.join(' ')).toContain('know of is 2026-05-27 09:12:30 +01:00.')
})
