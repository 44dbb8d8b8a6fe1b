import * as z from 'zod'
import { StreamId, streamKind, streamName } from '@/lib/domain/facts/fact'
import { done, refused } from '@/lib/domain/result'
import { queueJob } from '@/lib/server/jobs/queue-job'
import { command } from './command'
import { decisionGround } from './decision-ground'

const Line = z.string().trim().min(1).max(400)
const IssueDossier = z.strictObject({
  stream: StreamId.refine((id) => streamKind(id) === 'repair', 'a repair'),
  purpose: Line,
  changes: z.array(Line).max(40),
})

/** The task that builds, stores and issues a dossier; its input is `IssueDossierInput`. */
export const ISSUE_DOSSIER_TASK = 'issue-dossier'
export type IssueDossierInput = { repair: StreamId; purpose: string; changes: string[]; person: string }

/**
 * Issue the next revision of a repair's dossier, with its purpose and what changed: `{ stream, purpose, changes }`. It is built by a job; the answer's key tells
 * how far it is, and while it runs asking again changes nothing. Refuses `invalid`, `not-found`, `not-allowed`.
 */
export const issueDossier = command(IssueDossier, async (desk, form) => {
  const ground = await decisionGround(desk, form.stream, 'issue dossier')
  if (!ground.ok) return refused(ground.error)
  if (ground.value.state.issues.length > 0 && form.changes.length === 0) {
    return refused({ code: 'invalid', fields: { changes: ['say what changed since the last revision'] } })
  }
  const input: IssueDossierInput = {
    repair: form.stream,
    purpose: form.purpose,
    changes: form.changes,
    person: desk.actor.person,
  }
  const { key } = await queueJob(desk.store, desk.actor.tenant, {
    task: ISSUE_DOSSIER_TASK,
    key: `dossier-${streamName(form.stream)}`,
    input,
    attemptsAtMost: 1,
  })
  return done({ key })
})
