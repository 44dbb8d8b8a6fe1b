import { parseCheckpoint, type SignedCheckpoint, verifyCheckpoint } from '@/lib/evidence/checkpoint'
import { parseVkey } from '@/lib/evidence/vkey'
import type { TakenCheckpoint } from '@/lib/server/log/checkpoint-now'

/** A checkpoint's parts. @throws Error when it has not the form */
export function partsOf(checkpoint: { text: string }): SignedCheckpoint {
  const note = parseCheckpoint(checkpoint.text)
  if (!note.ok) throw new Error(note.error.at)
  return note.value
}

/** Whether a checkpoint is signed by the key it names. */
export function isSigned(checkpoint: TakenCheckpoint): boolean {
  const vkey = parseVkey(checkpoint.vkey)
  return vkey.ok && verifyCheckpoint(partsOf(checkpoint), vkey.value)
}
