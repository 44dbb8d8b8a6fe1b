import { expect, test } from 'vitest'
import { registerRowOf } from '@/lib/domain/fold/register-row'
import { closing } from './closing-job'
import { accepted, prepared, smallJob } from './small-job'
import { m, REPAIR } from './small-job-plan'
import { fold } from './small-job-state'

test('rule 46: everything that the plan asks for and is not there is listed', () => {
  const job = smallJob()
  job.record('05', 1, '05-12 09:04', { type: 'remark', text: 'band chalked' })
  const state = fold(job.facts, '05-12 10:00')
  const listed = state.missing.map((one) => `${one.point ?? ''} ${one.text}`.trim())
  expect(listed).toEqual(
    expect.arrayContaining([
      '02 No record.',
      '05 Record of cleanliness missing: 0 of 1.',
      '05 Signature "measured" by inspector missing.',
      '05 Not released by inspector.',
      'Not accepted.',
      'No design sheet recorded.',
    ]),
  )
  expect(listed.some((text) => text.startsWith('21') || text.startsWith('22'))).toBe(false)
})

test('rule 44 and removal: a disposal is recorded and a removal closes the register row', () => {
  const job = closing()
  accepted(job)
  job.make(REPAIR, 'disposed', '06-01 09:00', { sha256: 'b'.repeat(64), why: 'faces in view', legalHoldChecked: true })
  job.record('22', 1, '07-01 09:00', {
    type: 'removal',
    removedOn: '2026-07-01',
    why: 'line replaced',
    cuts: [{ clock: '3', depthSet: m('2', 'mm') }],
    pipeTouched: 'no',
    priedInHalves: 'yes',
    beneath: 'sound',
    plug: 'in place',
    wall: [],
  })
  expect(fold(job.facts, '06-02 09:00').remarkable.map((one) => one.text)).toContain(
    'Bytes disposed of: faces in view.',
  )
  expect(registerRowOf(fold(job.facts, '07-02 09:00')).status).toBe('removed')
})

test('a hold, a resumption and an abandonment show as the status of the repair', () => {
  const job = smallJob()
  expect(fold(job.facts, '05-12 07:00').status).toBe('planned')
  prepared(job)
  job.make(REPAIR, 'repair-held', '05-12 13:00', { state: 'on hold', reason: 'NCR-0009' })
  job.make(REPAIR, 'repair-held', '05-12 15:00', { state: 'resumed', reason: 'decided' })
  job.make(REPAIR, 'repair-held', '05-12 17:00', { state: 'abandoned', reason: 'line scrapped' })
  expect(
    ['05-12 12:00', '05-12 14:00', '05-12 16:00', '05-12 18:00'].map((when) => fold(job.facts, when).status),
  ).toEqual(['in progress', 'on hold', 'in progress', 'abandoned'])
})
