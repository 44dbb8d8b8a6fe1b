'use server'
import { issuePlan } from '@/lib/server/commands/issue-plan'
import { issueSpecification } from '@/lib/server/commands/issue-specification'
import { savePlanDraft } from '@/lib/server/commands/save-plan-draft'
import { saveSpecificationDraft } from '@/lib/server/commands/save-specification-draft'
import { act } from './act'

export async function saveSpecificationDraftAction(input: unknown) {
  return act(saveSpecificationDraft, input)
}

export async function issueSpecificationAction(input: unknown) {
  return act(issueSpecification, input)
}

export async function savePlanDraftAction(input: unknown) {
  return act(savePlanDraft, input)
}

export async function issuePlanAction(input: unknown) {
  return act(issuePlan, input)
}
