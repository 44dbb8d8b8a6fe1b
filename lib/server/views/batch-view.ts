import type { StreamId } from '@/lib/domain/facts/fact'
import { foldBatch } from '@/lib/domain/fold/fold-batch'
import type { BatchState } from '@/lib/domain/fold/store-states'
import { type BatchStanding, batchEvents, batchStanding, labelReadOf, labelTextOf } from './batch-words'
import { loadNames, type ReadingDesk } from './reading-desk'
import type { EventLine } from './trace-event-line'

export type BatchView = {
  state: BatchState
  standing: BatchStanding
  events: EventLine[]
  length: number
  labelRead: string
  /** The label's text with brackets, as a person reads it; null when none was kept. */
  labelText: string | null
  recallFact: string | null
}

/** A batch as its page shows it: how it stands today and everything that was done with it; null when it was never received. */
export async function loadBatchView({ desk }: Pick<ReadingDesk, 'desk'>, stream: StreamId): Promise<BatchView | null> {
  const facts = await desk.factsOf(stream)
  const state = facts && foldBatch(facts, stream, desk.now(null))
  if (!facts || !state) return null
  const names = await loadNames(desk)
  return {
    state,
    standing: batchStanding(state, desk.today(null)),
    events: batchEvents(facts, stream, names, desk.now(null)),
    length: facts.length,
    labelRead: labelReadOf(state.received),
    labelText: labelTextOf(state.received),
    recallFact: state.recalled?.id ?? null,
  }
}
