import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { approveDisposition } from '@/lib/server/commands/approve-disposition'
import { assessNonconformance } from '@/lib/server/commands/assess-nonconformance'
import { closeNonconformance } from '@/lib/server/commands/close-nonconformance'
import type { Command } from '@/lib/server/commands/command'
import { finishAction } from '@/lib/server/commands/finish-action'
import { finishCorrectiveAction } from '@/lib/server/commands/finish-corrective-action'
import { proposeDisposition } from '@/lib/server/commands/propose-disposition'
import { raiseNonconformance } from '@/lib/server/commands/raise-nonconformance'
import { rejectNonconformance } from '@/lib/server/commands/reject-nonconformance'
import { reopenNonconformance } from '@/lib/server/commands/reopen-nonconformance'
import { startAction } from '@/lib/server/commands/start-action'
import { verifyNonconformance } from '@/lib/server/commands/verify-nonconformance'
import { voidDuplicate } from '@/lib/server/commands/void-duplicate'
import { openWorld, type World } from './world'

const stream = 'nonconformance:N-1'
const raised = (number: string) => ({
  number,
  title: 'Cold',
  what: 'Cold probe',
  requirement: '9.1',
  repair: 'repair:R-1',
  linked: [],
  evidence: [],
  blocks: ['06'],
  causeClass: 'weather',
})

describe('the life of a nonconformance', () => {
  let world: World
  let time = 0
  const act = async (command: Command, person: string, body: object, of = stream) => {
    time += 1
    world.store.setNow(`2026-05-12T10:${String(time).padStart(2, '0')}:00+01:00`)
    return command(await world.of(person), { stream: of, body })
  }
  beforeAll(async () => {
    world = await openWorld()
  })
  afterAll(() => world.store.remove())

  test('anyone raises it under a number that is used once; its raiser does not reject it', async () => {
    expect(await act(raiseNonconformance, 'T1', { ...raised('N-1'), repair: 'repair:NONE' })).toEqual({
      ok: false,
      error: { code: 'not-found' },
    })
    expect(await act(raiseNonconformance, 'QI', raised('N-1'))).toMatchObject({ ok: true })
    expect(await act(raiseNonconformance, 'QJ', raised('N-1'))).toMatchObject({
      ok: false,
      error: { code: 'exists-already' },
    })
    expect(await act(rejectNonconformance, 'QI', { reason: 'within the limits' })).toMatchObject({
      ok: false,
      error: { why: 'raiser-does-not-reject' },
    })
    expect(await act(voidDuplicate, 'QI', { of: stream, reason: 'the same' })).toEqual({
      ok: false,
      error: { code: 'not-found' },
    })
  })

  test('it is assessed, then disposed of by who may, approved by each party that it needs', async () => {
    expect(await act(proposeDisposition, 'E', { disposition: 'repair', what: 'post-cure' })).toMatchObject({
      ok: false,
      error: { code: 'not-decided', why: 'state-does-not-allow' },
    })
    expect(await act(assessNonconformance, 'QI', { finding: '12.9 degrees at 6' })).toMatchObject({ ok: true })
    expect(await act(proposeDisposition, 'QI', { disposition: 'use as is', what: 'accept' })).toMatchObject({
      ok: false,
      error: { code: 'not-allowed', needs: ['engineer'] },
    })
    const proposed = await act(proposeDisposition, 'E', { disposition: 'repair', what: 'post-cure' })
    const proposal = proposed.ok ? proposed.value.fact : ''
    const other = '019e3333-0000-7000-8000-000000000001'
    expect(await act(approveDisposition, 'E', { proposal: other, party: 'engineer' })).toEqual({
      ok: false,
      error: { code: 'not-found' },
    })
    expect(await act(approveDisposition, 'E', { proposal, party: 'client' })).toMatchObject({
      ok: false,
      error: { code: 'not-allowed' },
    })
    expect(await act(approveDisposition, 'E', { proposal, party: 'engineer' })).toMatchObject({ ok: true })
    expect(await act(approveDisposition, 'E', { proposal, party: 'engineer' })).toMatchObject({
      ok: false,
      error: { why: 'approval-not-needed', detail: ['client'] },
    })
    expect(await act(startAction, 'T1', { what: 'blanket on' })).toMatchObject({
      ok: false,
      error: { why: 'state-does-not-allow' },
    })
    expect(await act(approveDisposition, 'K', { proposal, party: 'client' })).toMatchObject({ ok: true })
  })

  test('who did the work neither verifies nor closes it', async () => {
    expect(await act(startAction, 'QI', { what: 'blanket on' })).toMatchObject({ ok: true })
    expect(await act(finishAction, 'QI', { what: 'blanket off' })).toMatchObject({ ok: true })
    expect(await act(verifyNonconformance, 'QI', { how: 'seen', evidence: [] })).toEqual({
      ok: false,
      error: { code: 'second-person-missing' },
    })
    expect(await act(verifyNonconformance, 'QJ', { how: 'seen', evidence: [] })).toMatchObject({ ok: true })
    expect(await act(closeNonconformance, 'QI', {})).toEqual({ ok: false, error: { code: 'second-person-missing' } })
    expect(await act(closeNonconformance, 'QJ', {})).toMatchObject({ ok: true })
    expect(
      await act(finishCorrectiveAction, 'E', {
        action: '019e3333-0000-7000-8000-000000000002',
        evidence: 'revision 4',
      }),
    ).toEqual({ ok: false, error: { code: 'not-found' } })
    expect(await act(reopenNonconformance, 'K', { reason: 'seen again' })).toMatchObject({ ok: true })
  })
})
