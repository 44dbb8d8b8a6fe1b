import * as z from 'zod'
import { streamKind } from '@/lib/domain/facts/fact'
import { foldSpecification } from '@/lib/domain/fold/fold-revisions'
import { mayIssueSpecification } from '@/lib/domain/fold/may-issue'
import { refused } from '@/lib/domain/result'
import { authorise } from './authorise'
import { command } from './command'
import { decidingActor } from './decision-ground'
import { IssueRevision, secondOf } from './issue-revision'
import { refusedBy } from './refusal-of'

const IssueSpecification = z
  .strictObject(IssueRevision)
  .refine((form) => streamKind(form.stream) === 'specification', { error: 'a specification', path: ['stream'] })
const ACT = 'issue specification or plan'

/**
 * Issue the draft of a specification as its next revision; it is never changed again: `{ stream, changes, issuedOn?, second?, ...Entry }`. Client or engineer approve alone;
 * an inspector with the right to approve needs a second person. Refuses `invalid`, `not-found`, `not-allowed`, `draft-missing`, `second-person-missing`,
 * `heads-moved`, and as `identifySigner`.
 */
export const issueSpecification = command(IssueSpecification, async (desk, form) => {
  const facts = await desk.factsOf(form.stream)
  if (!facts) return refused({ code: 'not-found' })
  const barred = authorise(desk.actor, 'any', desk.today(null), ACT)
  if (barred) return refused(barred)
  const second = await secondOf(desk, form.second)
  if (!second.ok) return second
  const revisions = foldSpecification(facts, form.stream, desk.now(null))
  const { draft } = revisions
  if (!draft) return refused({ code: 'draft-missing' })
  const allowed = mayIssueSpecification(
    revisions,
    revisions.nextRevision,
    decidingActor(desk, { project: 'any', offset: null }),
    second.value,
  )
  if (!allowed.ok) {
    return allowed.error.code === 'second-person-needed'
      ? refused({ code: 'second-person-missing' })
      : refusedBy(ACT, allowed.error)
  }
  const body = {
    revision: revisions.nextRevision,
    issuedOn: form.issuedOn ?? desk.today(null),
    body: draft.body.body,
    changes: form.changes,
    approvedBy: desk.actor.person,
    ...(second.value ? { second: second.value.person } : {}),
  }
  const fact = desk.make({ stream: form.stream, kind: 'specification-issued', body, entry: form, offset: null })
  return desk.append([fact], form.heads ?? [{ stream: form.stream, length: facts.length }])
})
