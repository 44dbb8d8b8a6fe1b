import type { FactId, PersonId, StreamId } from '@/lib/domain/facts/fact'
import { ofKind } from '@/lib/domain/fold/order-facts'
import type { Moment } from '@/lib/domain/time'
import { loadFactsOfKind } from '@/lib/server/store/load-facts'
import { loadSigningKeys } from '@/lib/server/store/load-signing-keys'
import type { ReadingDesk } from './reading-desk'

/** A key that signs, or signed, for a person on a device. */
export type SigningKeyRow = {
  key: FactId
  device: StreamId
  /** What the device is called, where it was registered by name. */
  title: string | null
  takenAt: Moment
  ended: { at: Moment; by: PersonId; reason: string } | null
}

/** The keys of a person on devices, the last taken first. */
export async function loadSigningKeyRows(
  { desk, actor }: Pick<ReadingDesk, 'desk' | 'actor'>,
  person: PersonId,
): Promise<SigningKeyRow[]> {
  const facts = await loadSigningKeys(desk.store, actor.tenant, new Set([person]))
  const devices = ofKind(
    await loadFactsOfKind(desk.store, actor.tenant, 'device-registered', 'device'),
    'device-registered',
  )
  return ofKind(facts, 'signing-key-taken')
    .map((taken): SigningKeyRow => {
      const end = ofKind(facts, 'signing-key-ended').find(
        (one) => one.body.key === taken.id && one.stream === taken.stream,
      )
      return {
        key: taken.id,
        device: taken.stream,
        title: devices.findLast((one) => one.stream === taken.stream)?.body.title ?? null,
        takenAt: taken.observedAt,
        ended: end ? { at: end.observedAt, by: end.observedBy, reason: end.body.reason } : null,
      }
    })
    .reverse()
}
