import * as z from 'zod'
import { done, refused } from '@/lib/domain/result'
import { canonicalBytes } from '@/lib/evidence/canonical-bytes'
import { loadAuditFact } from '@/lib/server/views/audit-fact-view'
import { command } from './command'

const OpenTrailFact = z.strictObject({
  id: z.uuid(),
  part: z.enum(['fact.json', 'leaf.json', 'inclusion.json', 'checkpoint.txt']),
})

/**
 * One part of a fact's evidence as a file: `{ id, part }`, its exact bytes, its leaf, its inclusion as dossiers write it, or the checkpoint that the inclusion
 * leads to. Refuses `invalid`, `not-found`, `not-allowed`, and `not-decided` when the log cannot be signed.
 */
export const openTrailFact = command(OpenTrailFact, async (desk, { id, part }) => {
  const roles = desk.actor.rolesOn('any', desk.today(null))
  const fact = await loadAuditFact({ desk, actor: desk.actor, roles }, id)
  if (!fact.ok)
    return refused(
      fact.error.code === 'log-broken' ? { code: 'not-decided', why: fact.error.message, detail: [] } : fact.error,
    )
  const { bytes, leaf, inLog, checkpoint } = fact.value
  const text = {
    'fact.json': () => bytes,
    'leaf.json': () => leaf,
    'inclusion.json': () => new TextDecoder().decode(canonicalBytes({ index: inLog.index, proof: inLog.proof })),
    'checkpoint.txt': () => checkpoint,
  }[part]()
  return done({ text, fileName: `${id}-${part}` })
})
