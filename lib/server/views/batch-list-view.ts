import { cache } from 'react'
import type { StreamId } from '@/lib/domain/facts/fact'
import { addDays } from '@/lib/domain/fold/calendar'
import { foldBatch } from '@/lib/domain/fold/fold-batch'
import { ofKind, ofStream } from '@/lib/domain/fold/order-facts'
import type { BatchState } from '@/lib/domain/fold/repair-state'
import { showReadingUnit } from '@/lib/domain/reading'
import { type CalendarDay, dayOf } from '@/lib/domain/time'
import { listStreams } from '@/lib/server/store/list-streams'
import { loadStreams } from '@/lib/server/store/load-stream'
import type { ReadingDesk } from './reading-desk'

export type BatchStanding = 'recalled' | 'quarantined' | 'expired' | 'expires soon' | 'in date' | 'no expiry stated'
export type BatchRow = { stream: StreamId; number: string; role: string; product: string; received: string | null; receivedOn: CalendarDay; expiresOn: CalendarDay | null; standing: BatchStanding; isOpened: boolean; isRefused: boolean }

/** Days ahead of the use-by day at which a list says "expires soon". A reminder on screens; it judges nothing. */
const SOON_DAYS = 30

/** How a batch stands on a day. A recall outranks a quarantine, a quarantine the date. */
export function batchStanding(state: BatchState, today: CalendarDay): BatchStanding {
  if (state.recalled && state.isQuarantined) return 'recalled'
  if (state.isQuarantined) return 'quarantined'
  if (state.expiresOn === null) return 'no expiry stated'
  if (state.expiresOn < today) return 'expired'
  return state.expiresOn <= addDays(today, SOON_DAYS) ? 'expires soon' : 'in date'
}

const URGENCY: readonly BatchStanding[] = ['recalled', 'quarantined', 'expired', 'expires soon', 'in date', 'no expiry stated']

/** Every batch of the store as it stands today, what is barred or expires first. */
export const loadBatchRows = cache(async ({ desk, actor }: ReadingDesk): Promise<BatchRow[]> => {
  const streams = (await listStreams(desk.store, actor.tenant, 'batch')).map((one) => one.stream)
  const { facts } = await loadStreams(desk.store, actor.tenant, streams)
  const today = desk.today(null)
  const rows = streams.flatMap((stream): BatchRow[] => {
    const state = foldBatch(facts, stream, desk.now(null))
    if (!state) return []
    const own = ofStream(facts, stream)
    const first = ofKind(own, 'batch-received')[0]
    return [{
      stream, number: state.number, role: state.received.role, product: state.received.product, received: state.received.quantity ? showReadingUnit(state.received.quantity) : null,
      receivedOn: first ? dayOf(first.observedAt) : today, expiresOn: state.expiresOn, standing: batchStanding(state, today), isOpened: ofKind(own, 'batch-opened').length > 0, isRefused: ofKind(own, 'batch-refused').length > 0,
    }]
  })
  return rows.sort((a, b) => URGENCY.indexOf(a.standing) - URGENCY.indexOf(b.standing) || a.number.localeCompare(b.number))
})
