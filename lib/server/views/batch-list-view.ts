import { cache } from 'react'
import type { StreamId } from '@/lib/domain/facts/fact'
import { foldBatch } from '@/lib/domain/fold/fold-batch'
import { ofKind, ofStream } from '@/lib/domain/fold/order-facts'
import { showReadingUnit } from '@/lib/domain/reading'
import { type CalendarDay, dayOf } from '@/lib/domain/time'
import { listStreams } from '@/lib/server/store/list-streams'
import { loadStreams } from '@/lib/server/store/load-stream'
import { type BatchStanding, batchStanding } from './batch-words'
import type { ReadingDesk } from './reading-desk'

export type BatchRow = {
  stream: StreamId
  number: string
  role: string
  product: string
  received: string | null
  receivedOn: CalendarDay
  expiresOn: CalendarDay | null
  standing: BatchStanding
  isOpened: boolean
  isRefused: boolean
}

const URGENCY: readonly BatchStanding[] = [
  'recalled',
  'quarantined',
  'expired',
  'expires soon',
  'in date',
  'no expiry stated',
]

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
    return [
      {
        stream,
        number: state.number,
        role: state.received.role,
        product: state.received.product,
        received: state.received.quantity ? showReadingUnit(state.received.quantity) : null,
        receivedOn: first ? dayOf(first.observedAt) : today,
        expiresOn: state.expiresOn,
        standing: batchStanding(state, today),
        isOpened: ofKind(own, 'batch-opened').length > 0,
        isRefused: ofKind(own, 'batch-refused').length > 0,
      },
    ]
  })
  return rows.sort(
    (a, b) => URGENCY.indexOf(a.standing) - URGENCY.indexOf(b.standing) || a.number.localeCompare(b.number),
  )
})
