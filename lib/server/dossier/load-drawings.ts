import type { Sha256 } from '@/lib/domain/facts/fact'
import type { Fact } from '@/lib/domain/facts/fact-kinds'
import { ofKind } from '@/lib/domain/fold/order-facts'
import { DrawnSignature } from '@/lib/domain/signing/drawn-signature'
import { sha256Of } from '@/lib/evidence/sha256'
import type { Store } from '@/lib/server/store/store'

/** Drawn signatures that facts cite, by digest, as far as the store has them unchanged. */
export async function loadDrawings(
  store: Pick<Store, 'photos'>,
  facts: readonly Fact[],
): Promise<Map<Sha256, DrawnSignature>> {
  const found = new Map<Sha256, DrawnSignature>()
  for (const { body } of ofKind(facts, 'signed')) {
    const sha256 = body.method.kind === 'in person' ? body.method.drawing : undefined
    const bytes = sha256 && (await store.photos.read(sha256))
    if (!sha256 || !bytes || sha256Of(bytes) !== sha256) continue
    const drawing = DrawnSignature.safeParse(JSON.parse(new TextDecoder().decode(bytes)))
    if (drawing.success) found.set(sha256, drawing.data)
  }
  return found
}
