import { z } from 'zod'
import { StreamId } from '@/lib/domain/facts/fact'
import { done, refused, type Result } from '@/lib/domain/result'
import { CalendarDay } from '@/lib/domain/time'
import { ACTS, authorise } from './authorise'
import type { Desk } from './desk'
import { Entry } from './entry'
import { identifySigner, Signer } from './identify-signer'
import type { Refusal } from './refusal'

/** What issuing a revision takes: what changed, and the second person where an inspector approves. The draft that was looked at is named by its heads. */
export const IssueRevision = { stream: StreamId, changes: z.string().trim().min(3).max(400), issuedOn: CalendarDay.optional(), second: Signer.optional(), ...Entry } as const
type IssueForm = z.infer<z.ZodObject<typeof IssueRevision>>

/**
 * Who approves a revision: client or engineer alone; an inspector with the right to approve together with a second person, who confirms with a
 * password. Refuses `not-allowed`, `second-person-missing`, and as `identifySigner`.
 */
export async function approversOf(desk: Desk, form: IssueForm): Promise<Result<{ approvedBy: typeof desk.actor.person; second?: typeof desk.actor.person }, Refusal>> {
  const { actor } = desk
  const day = desk.today(null)
  const barred = authorise(actor, 'any', day, 'issue specification or plan')
  if (barred) return refused(barred)
  const alone = actor.rolesOn('any', day).some((role) => role === 'client' || role === 'engineer')
  if (alone) return done({ approvedBy: actor.person })
  if (!actor.approvesOn('any', day, 'inspector')) return refused({ code: 'not-allowed', act: 'issue specification or plan', needs: [...ACTS['issue specification or plan']] })
  if (!form.second || form.second.by !== 'password' || form.second.person === actor.person) return refused({ code: 'second-person-missing' })
  const second = await identifySigner(desk, form.second)
  if (!second.ok) return second
  const secondBarred = authorise(second.value.signer, 'any', day, 'draft specification or plan')
  return secondBarred ? refused(secondBarred) : done({ approvedBy: actor.person, second: second.value.signer.person })
}
