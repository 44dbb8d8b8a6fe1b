import type { Fact } from '@/lib/domain/facts/fact-kinds'
import { ofKind } from '@/lib/domain/fold/order-facts'
import { parseBase64 } from '@/lib/evidence/base64'
import type { Checkpoint } from '@/lib/evidence/checkpoint'
import { isConsistent, parseProof } from '@/lib/evidence/verify-proof'
import type { Ledger } from '../ledger'
import type { Manifest } from './manifest-schema'

/**
 * Check the chain of issues: the list is what the record says, revisions rise by one from 0, the log still holds all that it held at each, and this issue is the next.
 * Breaks: `earlier-differs`, `earlier-consistency`, `revision-number`. @returns how many were issued before the log had checkpoints
 */
export function checkEarlier(
  facts: readonly Fact[],
  manifest: Manifest,
  checkpoint: Checkpoint | null,
  ledger: Ledger,
): { withoutLog: number } {
  const issued = ofKind(facts, 'dossier-issued')
    .filter((fact) => fact.body.repair === manifest.repair)
    .sort((a, b) => a.body.revision - b.body.revision)
  const { earlier } = manifest
  if (issued.length !== earlier.length)
    ledger.broken('earlier-differs', `${earlier.length} listed, ${issued.length} in the record`)
  let withoutLog = 0
  for (const [index, entry] of earlier.entries()) {
    const place = `revision ${entry.revision}`
    const body = issued[index]?.body
    const { size, root, consistency } = entry
    const isSame =
      entry.revision === index &&
      body?.revision === entry.revision &&
      body.sha256 === entry.sha256 &&
      (body.log?.size ?? null) === size &&
      (body.log?.root ?? null) === root
    if (!isSame) ledger.broken('earlier-differs', place)
    if (size === null || root === null || consistency === null) {
      if (size !== null || root !== null || consistency !== null) ledger.broken('earlier-consistency', place)
      withoutLog += 1
      continue
    }
    const proof = parseProof(consistency)
    const fromRoot = parseBase64(root)
    const holds =
      checkpoint !== null &&
      proof !== null &&
      fromRoot !== null &&
      isConsistent({ fromSize: size, fromRoot, size: checkpoint.size, root: checkpoint.root, proof })
    if (checkpoint !== null && !holds) ledger.broken('earlier-consistency', place)
  }
  const isIssue = manifest.kind === 'issue'
  const next = isIssue ? earlier.length : null
  if (manifest.revision !== next || (manifest.purpose !== null) !== isIssue)
    ledger.broken('revision-number', `revision ${manifest.revision}`)
  return { withoutLog }
}
