import { expect, test } from 'vitest'
import { FactId, PersonId } from '@/lib/domain/facts/fact'
import { missingRecords } from '@/lib/domain/fold/missing-for-release'
import type { Role } from '@/lib/domain/roles'
import { waitingLines } from '@/lib/domain/waiting/waiting-lines'
import { prepared, smallJob } from './small-job'
import { REPAIR } from './small-job-plan'
import { attemptOf, fold, pointOf, releaseOf } from './small-job-state'

const DEVICE = 'device:tablet'

test('a release given without a network, not knowing the record, is in question until ruled on; it stands or falls from the start', () => {
  const job = smallJob()
  const { releases } = prepared(job)
  const decision = FactId.parse(releases['09']?.id)
  const before = fold(job.facts, '05-12 12:00')
  expect(releaseOf(before, '09')?.state).toBe('valid')
  const unseen = job.facts.find((one) => one.kind === 'recorded' && one.body.point === '09')
  const noted = job.make(DEVICE, 'conflict-noted', '05-12 12:05', {
    repair: REPAIR,
    facts: [FactId.parse(unseen?.id)],
    decision,
    remark: 'Release of point 09 given without a network',
  })
  const open = fold(job.facts, '05-12 12:10')
  expect(releaseOf(open, '09')).toMatchObject({ state: 'in question', fell: { fact: noted.id } })
  expect(attemptOf(open, '09').state).toBe('in question')
  expect(open.conflicts).toMatchObject([{ point: '09', noted: noted.id, decision, resolved: null }])
  expect(open.missing.some((one) => one.text.includes('Release of point 09 given without a network'))).toBe(true)
  expect(pointOf(open, '14').blockedBy).toContain('09')
  const toDecide = (state: typeof open, role: Role) =>
    waitingLines(state, [role], PersonId.parse('maren')).filter((one) => one.kind === 'decide' && one.point === '09')
  expect(toDecide(open, 'inspector')).toMatchObject([
    { title: expect.stringMatching(/: a conflict waits for a ruling$/), detail: open.conflicts[0]?.text },
  ])
  expect(toDecide(open, 'lead')).toEqual([])
  const chosen = job.make(REPAIR, 'governs-chosen', '05-12 12:15', {
    point: pointOf(open, '09').no,
    attempt: 1,
    record: FactId.parse(unseen?.id),
    over: [FactId.parse(releases['09']?.id)],
    reason: 'which record governs rules on no release',
  })
  expect(fold(job.facts, '05-12 12:16').conflicts).toMatchObject([{ noted: noted.id, resolved: null }])
  job.facts.splice(job.facts.indexOf(chosen), 1)
  const rule = (ruling: 'decision stands' | 'decision falls') => {
    const settled = job.make(REPAIR, 'conflict-settled', '05-12 12:20', {
      conflict: noted.id,
      ruling,
      reason: 'the other record says the same',
    })
    const state = fold(job.facts, '05-12 12:30')
    job.facts.splice(job.facts.indexOf(settled), 1)
    return state
  }
  const stands = rule('decision stands')
  expect(releaseOf(stands, '09')?.state).toBe('valid')
  expect(stands.conflicts[0]?.resolved).not.toBeNull()
  expect(toDecide(stands, 'inspector')).toEqual([])
  const falls = rule('decision falls')
  expect(releaseOf(falls, '09')).toMatchObject({
    state: 'withdrawn',
    fell: { at: releases['09']?.observedAt, cause: 'Given without knowing the record: the other record says the same' },
  })
  expect(pointOf(falls, '14').blockedBy).toContain('09')
})

test('a device’s signature stands by its own key alone: not by another person’s, another device’s, or one that had ended', () => {
  const job = smallJob()
  const record = job.record('05', 1, '05-12 08:10', { type: 'remark', text: 'dry' }, { device: 'tablet', by: 'tobias' })
  const keyOf = (stream: string, by: string) =>
    job.make(
      stream,
      'signing-key-taken',
      '05-12 07:00',
      { algorithm: 'ECDSA P-256 SHA-256', publicKey: `B${'A'.repeat(86)}=` },
      { by },
    )
  const sign = (key: string, time: string) =>
    job.make(
      REPAIR,
      'signed',
      time,
      {
        meaning: 'measured',
        point: record.body.point,
        attempt: 1,
        role: 'inspector',
        name: 'tobias',
        party: 'inspector',
        covers: [{ fact: record.id, sha256: '0'.repeat(64) as never }],
        method: {
          kind: 'device',
          proof: { key: FactId.parse(key), gate: 'PIN', offline: true, signature: `${'A'.repeat(86)}==` },
        },
      },
      { device: 'tablet', by: 'tobias' },
    )
  const own = keyOf(DEVICE, 'tobias')
  const ofAnother = keyOf(DEVICE, 'maren')
  const elsewhere = keyOf('device:phone', 'tobias')
  sign(own.id, '05-12 09:00')
  sign(ofAnother.id, '05-12 09:01')
  sign(elsewhere.id, '05-12 09:02')
  sign(own.id, '05-12 10:00')
  const ended = job.make(DEVICE, 'signing-key-ended', '05-12 09:30', { key: own.id, reason: 'tablet lost' })
  const { signatures } = attemptOf(fold(job.facts, '05-12 12:00'), '05')
  expect(signatures.map((one) => [one.state, one.brokenBy])).toEqual([
    ['stands', null],
    ['broken', null],
    ['broken', null],
    ['broken', ended.id],
  ])
})

test('photos that only the device has answer the plan’s demand, one each, and none but their own', () => {
  const job = smallJob()
  prepared(job)
  const { plan } = pointOf(fold(job.facts, '05-12 12:00'), '05')
  const demanding = { ...plan, records: [], photos: [{ id: 'band', show: 'Whole prepared band', atLeast: 2 }] }
  expect(missingRecords(demanding, [], [])).toEqual(['Photo missing: Whole prepared band (0 of 2).'])
  expect(missingRecords(demanding, [], [], ['band', 'other'])).toEqual(['Photo missing: Whole prepared band (1 of 2).'])
  expect(missingRecords(demanding, [], [], ['band', 'band'])).toEqual([])
  const told = fold(job.facts, '05-12 12:00', { photosToCome: [{ point: '05', attempt: 1, demand: 'band' }] })
  expect(attemptOf(told, '05').photosToCome).toEqual(['band'])
  expect(attemptOf(told, '06').photosToCome).toEqual([])
})
