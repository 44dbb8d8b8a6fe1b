import { expect, test } from 'vitest'
import type { DecidingActor } from '@/lib/domain/fold/decision'
import { foldProject, rolesOn } from '@/lib/domain/fold/fold-project'
import { foldPlan, foldSpecification, inForceFrom, revisionAt } from '@/lib/domain/fold/fold-revisions'
import { mayLiftQuarantine, mayQuarantine } from '@/lib/domain/fold/may-correct'
import { mayIssuePlan, mayIssueSpecification } from '@/lib/domain/fold/may-issue'
import { Plan } from '@/lib/domain/plan'
import type { Role } from '@/lib/domain/roles'
import { at, factMaker, person, stream } from '../fold/fact-maker'
import { planBody, specificationBody } from '../fold/small-job-plan'

const actor = (name: string, roles: Role[], approve = false): DecidingActor => ({
  person: person(name),
  roles,
  approve,
})

test('a draft is issued by client or engineer alone, by the quality manager with a second person', () => {
  const { facts, make } = factMaker()
  const spec = stream('specification:S')
  make('specification:S', 'specification-draft-saved', '04-20 08:00', { body: specificationBody() })
  const state = foldSpecification(facts, spec, at('04-20 09:00'))
  expect(mayIssueSpecification(state, 0, actor('ravi', ['engineer']), null)).toEqual({ ok: true, value: true })
  expect(mayIssueSpecification(state, 0, actor('tobias', ['inspector']), null)).toMatchObject({
    ok: false,
    error: { code: 'not-allowed' },
  })
  expect(mayIssueSpecification(state, 0, actor('tobias', ['inspector'], true), { person: person('tobias') })).toEqual({
    ok: false,
    error: { code: 'second-person-needed' },
  })
  expect(mayIssueSpecification(state, 0, actor('tobias', ['inspector'], true), { person: person('ysolde') })).toEqual({
    ok: true,
    value: true,
  })
  make('specification:S', 'specification-issued', '04-20 10:00', {
    revision: 3,
    issuedOn: '2026-04-20',
    body: specificationBody(),
    changes: 'first',
    approvedBy: 'ravi',
  })
  const issued = foldSpecification(facts, spec, at('04-20 11:00'))
  expect(issued).toMatchObject({ draft: null, nextRevision: 4, inForce: { body: { revision: 3 } } })
  expect(mayIssueSpecification(issued, 4, actor('ravi', ['engineer']), null)).toEqual({
    ok: false,
    error: { code: 'draft-missing' },
  })
})

test('a plan whose blocks form a cycle is not issued', () => {
  const { facts, make } = factMaker()
  const body = planBody()
  make('plan:P', 'plan-draft-saved', '04-20 08:00', { body })
  const state = foldPlan(facts, stream('plan:P'), at('04-20 09:00'))
  const parsed = Plan.parse(body)
  expect(mayIssuePlan(state, 0, parsed, actor('ravi', ['engineer']), null)).toEqual({ ok: true, value: true })
  const cyclic = Plan.parse({
    ...body,
    points: body.points.map((one) => (one.no === '09' ? { ...one, blocks: ['05'] } : one)),
  })
  expect(mayIssuePlan(state, 0, cyclic, actor('ravi', ['engineer']), null)).toEqual({
    ok: false,
    error: { code: 'blocks-form-a-cycle', cycle: ['05', '06', '09', '05'] },
  })
})

test('a revision is in force from its issue, or from the day it names where that is later', () => {
  const { make } = factMaker()
  const issue = (revision: number, when: string, issuedOn: string) =>
    make('specification:S', 'specification-issued', when, {
      revision,
      issuedOn,
      body: specificationBody(),
      changes: 'x',
      approvedBy: 'ravi',
    })
  const first = issue(1, '04-20 10:00', '2026-04-20')
  const second = issue(2, '05-20 10:00', '2026-05-25')
  expect(new Date(inForceFrom(first)).toISOString()).toBe('2026-04-20T09:00:00.000Z')
  expect(new Date(inForceFrom(second)).toISOString()).toBe('2026-05-24T23:00:00.000Z')
  expect(revisionAt([first, second], at('05-24 23:59'))?.body.revision).toBe(1)
  expect(revisionAt([first, second], at('05-25 00:00'))?.body.revision).toBe(2)
  expect(revisionAt([first, second], at('04-20 09:59'))).toBeNull()
})

test('a quarantine is lifted with a second person, and never from a recalled batch', () => {
  expect(mayQuarantine(actor('dorrit', ['technician']))).toMatchObject({ ok: false, error: { code: 'not-allowed' } })
  expect(mayQuarantine(actor('odile', ['stores']))).toEqual({ ok: true, value: true })
  const inspector = actor('tobias', ['inspector'])
  expect(mayLiftQuarantine({ isQuarantined: true }, inspector, 'tobias')).toEqual({
    ok: false,
    error: { code: 'second-person-needed' },
  })
  expect(mayLiftQuarantine({ isQuarantined: false }, inspector, 'ysolde')).toEqual({
    ok: false,
    error: { code: 'not-quarantined' },
  })
  expect(mayLiftQuarantine({ isQuarantined: true, recalled: {} }, inspector, 'ysolde')).toEqual({
    ok: false,
    error: { code: 'recalled' },
  })
  expect(mayLiftQuarantine({ isQuarantined: true, recalled: null }, inspector, 'ysolde')).toEqual({
    ok: true,
    value: true,
  })
})

test('roles hold in a project between their days, both included, and end where they were ended', () => {
  const { facts, make } = factMaker()
  make('project:shaft-2', 'project-opened', '04-01 09:00', {
    name: 'Shaft 2',
    site: 'mine',
    utcOffset: '+01:00',
    owner: 'Quellmark',
  })
  make('project:shaft-2', 'role-granted', '04-01 09:00', {
    person: 'tobias',
    role: 'inspector',
    approve: true,
    from: '2026-04-01',
    to: '2026-06-30',
  })
  const lead = make('project:shaft-2', 'role-granted', '04-01 09:00', {
    person: 'tobias',
    role: 'lead',
    from: '2026-04-01',
  })
  make('project:shaft-2', 'role-ended', '05-01 09:00', { grant: lead.id, on: '2026-05-10', reason: 'moved' })
  const project = foldProject(facts, stream('project:shaft-2'), at('05-12 09:00'))
  if (!project) throw new Error('not opened')
  expect(rolesOn(project, person('tobias'), '2026-05-10')).toEqual({ roles: ['inspector', 'lead'], approve: true })
  expect(rolesOn(project, person('tobias'), '2026-05-11')).toEqual({ roles: ['inspector'], approve: true })
  expect(rolesOn(project, person('tobias'), '2026-07-01')).toEqual({ roles: [], approve: false })
})
