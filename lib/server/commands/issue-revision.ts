import * as z from 'zod'
import { StreamId } from '@/lib/domain/facts/fact'
import { done, type Result, refused } from '@/lib/domain/result'
import { CalendarDay } from '@/lib/domain/time'
import type { Actor } from '@/lib/server/auth/actor'
import { authorise } from './authorise'
import type { Desk } from './desk'
import { Entry } from './entry'
import { identifySigner, Signer } from './identify-signer'
import type { Refusal } from './refusal'

/** What issuing a revision takes: what changed, and the second person where an inspector approves. The draft that was looked at is named by its heads. */
export const IssueRevision = {
  stream: StreamId,
  changes: z.string().trim().min(3).max(400),
  issuedOn: CalendarDay.optional(),
  second: Signer.optional(),
  ...Entry,
} as const

/**
 * The second person of an issue, made sure of by a password; null where none is named. Refuses `second-person-missing` for the actor or one without an
 * account, `not-allowed` when the second person may not draft, and as `identifySigner`.
 */
export async function secondOf(desk: Desk, second: Signer | undefined): Promise<Result<Actor | null, Refusal>> {
  if (!second) return done(null)
  if (second.by !== 'password' || second.person === desk.actor.person) return refused({ code: 'second-person-missing' })
  const identified = await identifySigner(desk, second)
  if (!identified.ok) return identified
  const barred = authorise(identified.value.signer, 'any', desk.today(null), 'draft specification or plan')
  return barred ? refused(barred) : done(identified.value.signer)
}
