import { z } from 'zod'
import { streamKind } from '@/lib/domain/facts/fact'
import { foldSpecification } from '@/lib/domain/fold/fold-revisions'
import { refused } from '@/lib/domain/result'
import { command } from './command'
import { approversOf, IssueRevision } from './issue-revision'

const IssueSpecification = z.strictObject(IssueRevision).refine((form) => streamKind(form.stream) === 'specification', { error: 'a specification', path: ['stream'] })

/**
 * Issue the draft of a specification as its next revision; it is never changed again: `{ stream, changes, issuedOn?, second?, ...Entry }`.
 * Refuses `invalid`, `not-found`, `draft-missing`, `heads-moved`, and as `approversOf`.
 */
export const issueSpecification = command(IssueSpecification, async (desk, form) => {
  const facts = await desk.factsOf(form.stream)
  if (!facts) return refused({ code: 'not-found' })
  const approvers = await approversOf(desk, form)
  if (!approvers.ok) return approvers
  const { draft, nextRevision } = foldSpecification(facts, form.stream, desk.now(null))
  if (!draft) return refused({ code: 'draft-missing' })
  const body = { revision: nextRevision, issuedOn: form.issuedOn ?? desk.today(null), body: draft.body.body, changes: form.changes, ...approvers.value }
  const fact = desk.make({ stream: form.stream, kind: 'specification-issued', body, entry: form, offset: null })
  return desk.append([fact], form.heads ?? [{ stream: form.stream, length: facts.length }])
})
