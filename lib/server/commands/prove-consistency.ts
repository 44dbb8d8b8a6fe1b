import * as z from 'zod'
import { done, refused } from '@/lib/domain/result'
import { consistencyProof } from '@/lib/server/log/proofs'
import { type LogNow, logNow } from '@/lib/server/views/audit-head-view'
import { AUDIT_BARRED, mayAudit } from '@/lib/server/views/audit-reach'
import { command } from './command'

const ProveConsistency = z.strictObject({ from: z.coerce.number().int().min(1).max(Number.MAX_SAFE_INTEGER) })

/** The log's head now, and the proof that it begins with the tree of `from` leaves; no proof when the log has fewer. Whether it proves anything is for the reader to compute. */
export type ConsistencyAnswer = { log: LogNow; proof: string[] | null }

/** Prove how the log of the actor's tenant continues that of an earlier size: `{ from }`. Refuses `invalid`, `not-allowed`, and `not-decided` when the log cannot be signed. */
export const proveConsistency = command(ProveConsistency, async (desk, { from }) => {
  if (!mayAudit(desk)) return refused(AUDIT_BARRED)
  const log = await logNow(desk)
  if (!log.ok) return refused({ code: 'not-decided', why: log.error.message, detail: [] })
  const { size } = log.value.checkpoint
  return done<ConsistencyAnswer>({
    log: log.value,
    proof: from > size ? null : await consistencyProof(desk.store, desk.actor.tenant, from, size),
  })
})
