import type { Sha256 } from '@/lib/domain/facts/fact'
import type { DrawnSignature } from '@/lib/domain/signing/drawn-signature'
import { canonicalBytes } from '@/lib/evidence/canonical-bytes'
import { sha256Of } from '@/lib/evidence/sha256'
import type { Desk } from './desk'

/** Keep a drawn signature's bytes beside the facts and give their digest, by which a signature cites it. */
export async function keepDrawing(desk: Pick<Desk, 'store'>, drawing: DrawnSignature): Promise<Sha256> {
  const bytes = canonicalBytes(drawing)
  const sha256 = sha256Of(bytes)
  await desk.store.photos.put(sha256, bytes)
  return sha256
}
