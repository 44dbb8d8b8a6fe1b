import { expect, test } from 'vitest'
import type { DecidingActor } from '@/lib/domain/fold/decision'
import { concededBy, foldNonconformance } from '@/lib/domain/fold/fold-nonconformance'
import { mayMoveNonconformance, type NonconformanceAct } from '@/lib/domain/fold/may-move-nonconformance'
import { mayOpenPoint } from '@/lib/domain/fold/may-submit'
import type { NonconformanceState } from '@/lib/domain/fold/nonconformance-state'
import type { Role } from '@/lib/domain/roles'
import { at, factMaker, person, stream } from './fact-maker'
import { prepared, smallJob } from './small-job'
import { REPAIR } from './small-job-plan'
import { fold } from './small-job-state'

const NCR = 'nonconformance:NCR-0009'
const actor = (name: string, ...roles: Role[]): DecidingActor => ({ person: person(name), roles, approve: false })

function raised() {
  const { facts, make } = factMaker()
  make(NCR, 'nonconformance-raised', '05-27 13:05', {
    number: 'NCR-0009',
    title: 'window lapsed',
    what: 'primer after the window',
    requirement: '6.1',
    repair: 'repair:MD-0043',
    linked: [],
    evidence: [],
    blocks: ['05'],
    causeClass: 'method',
  })
  const state = (when = '06-30 00:00'): NonconformanceState => {
    const folded = foldNonconformance(facts, stream(NCR), at(when))
    if (!folded) throw new Error('not raised')
    return folded
  }
  return { facts, make, state }
}

test('raised to closed in order, with the approvals that the disposition needs', () => {
  const { make, state } = raised()
  const seen = [state().state]
  const step = (kind: Parameters<typeof make>[1], when: string, body: object, by = 'tobias') => {
    const fact = make(NCR, kind, when, body, { by })
    seen.push(state().state)
    return fact
  }
  step('contained', '05-27 13:10', { action: 'work stopped' })
  step('assessed', '05-27 14:00', { finding: 'prep stood too long' })
  const proposal = step(
    'disposition-proposed',
    '05-27 14:30',
    { disposition: 'repair', what: 'other resin', conceded: [{ point: '15', attempt: 1 }] },
    'ravi',
  )
  expect(state().needsApproval).toEqual(['engineer', 'client'])
  step('disposition-approved', '05-27 15:00', { proposal: proposal.id, party: 'engineer' }, 'ravi')
  expect(concededBy(state())).toEqual([])
  step('disposition-approved', '05-27 15:30', { proposal: proposal.id, party: 'client' }, 'ludmila')
  expect(concededBy(state())).toEqual(['15/1'])
  step('action-started', '05-27 16:00', { what: 'strip' }, 'maren')
  step('action-done', '05-27 17:00', { what: 'stripped' }, 'maren')
  step('verified', '05-28 08:00', { how: 'seen', evidence: [] }, 'ysolde')
  step('closed', '05-28 09:00', {}, 'ysolde')
  step('reopened', '05-29 09:00', { reason: 'found again' })
  expect(seen).toEqual([
    'raised',
    'contained',
    'assessed',
    'disposition proposed',
    'disposition proposed',
    'disposition approved',
    'action in progress',
    'action in progress',
    'verified',
    'closed',
    'reopened',
  ])
  expect(state('05-28 10:00')).toMatchObject({ isOpen: false, blocksAcceptance: false })
  expect(state()).toMatchObject({ isOpen: true, blocksAcceptance: true, proposal: null })
})

test('an approval of an older proposal does not count', () => {
  const { make, state } = raised()
  make(NCR, 'assessed', '05-27 14:00', { finding: 'x' })
  const old = make(NCR, 'disposition-proposed', '05-27 14:30', { disposition: 'replace', what: 'strip' })
  make(NCR, 'disposition-proposed', '05-27 14:40', { disposition: 'replace', what: 'strip and blast' })
  make(NCR, 'disposition-approved', '05-27 15:00', { proposal: old.id, party: 'engineer' })
  expect(state()).toMatchObject({ state: 'disposition proposed', needsApproval: ['engineer'], approvals: [] })
  expect(
    mayMoveNonconformance(
      state(),
      { kind: 'disposition-approved', party: 'engineer', proposal: old.id },
      actor('ravi', 'engineer'),
    ),
  ).toEqual({ ok: false, error: { code: 'proposal-stale' } })
})

test('side states stay listed: rejected, void, and the raiser does not reject the own finding', () => {
  const { make, state } = raised()
  expect(mayMoveNonconformance(state(), { kind: 'not-a-nonconformance' }, actor('tobias', 'inspector'))).toEqual({
    ok: false,
    error: { code: 'raiser-does-not-reject', person: 'tobias' },
  })
  expect(mayMoveNonconformance(state(), { kind: 'not-a-nonconformance' }, actor('ysolde', 'inspector'))).toEqual({
    ok: true,
    value: true,
  })
  make(NCR, 'not-a-nonconformance', '05-27 14:00', { reason: 'within the window after all' }, { by: 'ysolde' })
  expect(state()).toMatchObject({ state: 'rejected', isOpen: false, number: 'NCR-0009' })
  expect(mayMoveNonconformance(state(), { kind: 'voided-duplicate' }, actor('ysolde', 'inspector'))).toMatchObject({
    ok: false,
    error: { code: 'state-does-not-allow', state: 'rejected' },
  })
})

test('who proposes, who approves, and the doer neither verifies nor closes', () => {
  const { make, state } = raised()
  const may = (act: NonconformanceAct, who: DecidingActor) => mayMoveNonconformance(state(), act, who)
  expect(may({ kind: 'disposition-proposed', disposition: 'rework' }, actor('maren', 'lead'))).toMatchObject({
    ok: false,
    error: { code: 'state-does-not-allow', follows: ['assessed', 'disposition proposed'] },
  })
  make(NCR, 'assessed', '05-27 14:00', { finding: 'x' })
  expect(may({ kind: 'disposition-proposed', disposition: 'use as is' }, actor('maren', 'lead'))).toEqual({
    ok: false,
    error: { code: 'not-allowed', needs: ['engineer'] },
  })
  expect(may({ kind: 'disposition-proposed', disposition: 'rework' }, actor('maren', 'lead'))).toEqual({
    ok: true,
    value: true,
  })
  const proposal = make(
    NCR,
    'disposition-proposed',
    '05-27 14:30',
    { disposition: 'rework', what: 'again' },
    { by: 'maren' },
  )
  expect(
    may({ kind: 'disposition-approved', party: 'client', proposal: proposal.id }, actor('ludmila', 'client')),
  ).toEqual({ ok: false, error: { code: 'approval-not-needed', needs: ['inspector'] } })
  make(NCR, 'disposition-approved', '05-27 15:00', { proposal: proposal.id, party: 'inspector' })
  make(NCR, 'action-started', '05-27 16:00', { what: 'again' }, { by: 'ysolde' })
  expect(may({ kind: 'verified' }, actor('ysolde', 'inspector'))).toEqual({
    ok: false,
    error: { code: 'doer-does-not-verify', person: 'ysolde' },
  })
  expect(may({ kind: 'verified' }, actor('tobias', 'inspector'))).toEqual({ ok: true, value: true })
})

test('"no effect" is verified by a second inspector', () => {
  const { make, state } = raised()
  make(NCR, 'assessed', '05-27 14:00', { finding: 'x' })
  const proposal = make(NCR, 'disposition-proposed', '05-27 14:30', {
    disposition: 'no effect',
    what: 'ratio in range',
  })
  make(NCR, 'disposition-approved', '05-27 15:00', { proposal: proposal.id, party: 'engineer' }, { by: 'ravi' })
  expect(mayMoveNonconformance(state(), { kind: 'verified' }, actor('tobias', 'inspector'))).toEqual({
    ok: false,
    error: { code: 'second-inspector-needed', person: 'tobias' },
  })
})

test('an open nonconformance blocks its points, but not the attempt that its approved disposition opened', () => {
  const job = smallJob()
  prepared(job)
  job.make(NCR, 'nonconformance-raised', '05-12 13:05', {
    number: 'NCR-0009',
    title: 'window lapsed',
    what: 'primer late',
    requirement: '6.1',
    repair: REPAIR,
    linked: [],
    evidence: [],
    blocks: ['06'],
    causeClass: 'method',
  })
  expect(mayOpenPoint(fold(job.facts, '05-12 13:10'), '06')).toEqual({
    ok: false,
    error: { code: 'nonconformance-blocks', numbers: ['NCR-0009'] },
  })
  job.make(NCR, 'assessed', '05-12 13:20', { finding: 'x' })
  const proposal = job.make(NCR, 'disposition-proposed', '05-12 13:30', { disposition: 'replace', what: 'strip' })
  job.make(REPAIR, 'attempt-opened', '05-12 13:40', { points: ['05', '06'], attempt: 2, reason: 'too early' })
  expect(mayOpenPoint(fold(job.facts, '05-12 13:45'), '06').ok).toBe(false)
  job.make(NCR, 'disposition-approved', '05-12 13:50', { proposal: proposal.id, party: 'engineer' }, { by: 'ravi' })
  job.make(REPAIR, 'attempt-opened', '05-12 14:00', {
    points: ['05', '06'],
    attempt: 3,
    reason: 'strip and start over',
    nonconformance: NCR,
  })
  expect(mayOpenPoint(fold(job.facts, '05-12 14:10'), '06')).toEqual({
    ok: false,
    error: { code: 'blocked', by: ['05'] },
  })
})
