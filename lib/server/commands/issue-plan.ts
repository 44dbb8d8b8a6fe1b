import { z } from 'zod'
import { streamKind } from '@/lib/domain/facts/fact'
import { foldPlan } from '@/lib/domain/fold/fold-revisions'
import { cycleOfBlocks } from '@/lib/domain/plan'
import { refused } from '@/lib/domain/result'
import { command } from './command'
import { approversOf, IssueRevision } from './issue-revision'

const IssuePlan = z.strictObject(IssueRevision).refine((form) => streamKind(form.stream) === 'plan', { error: 'a plan', path: ['stream'] })

/**
 * Issue the draft of a plan as its next revision; it is never changed again: `{ stream, changes, issuedOn?, second?, ...Entry }`.
 * Refuses `invalid`, `not-found`, `draft-missing`, `blocks-form-a-cycle` with its points, `heads-moved`, and as `approversOf`.
 */
export const issuePlan = command(IssuePlan, async (desk, form) => {
  const facts = await desk.factsOf(form.stream)
  if (!facts) return refused({ code: 'not-found' })
  const approvers = await approversOf(desk, form)
  if (!approvers.ok) return approvers
  const { draft, nextRevision } = foldPlan(facts, form.stream, desk.now(null))
  if (!draft) return refused({ code: 'draft-missing' })
  const cycle = cycleOfBlocks(draft.body.body)
  if (cycle) return refused({ code: 'blocks-form-a-cycle', cycle })
  const body = { revision: nextRevision, issuedOn: form.issuedOn ?? desk.today(null), body: draft.body.body, changes: form.changes, ...approvers.value }
  const fact = desk.make({ stream: form.stream, kind: 'plan-issued', body, entry: form, offset: null })
  return desk.append([fact], form.heads ?? [{ stream: form.stream, length: facts.length }])
})
