import type { FactId, Receipt, Sha256, StreamId } from '@/lib/domain/facts/fact'
import type { FactFault } from '@/lib/domain/facts/fact-kinds'

/** Why nothing of a batch was appended. */
export type AppendRefusal =
  /** Facts that are none, by their place in the batch (from 0). */
  | { code: 'fact-refused'; refusals: { index: number; id: string | null; faults: FactFault[] }[] }
  /** Another fact of this tenant, or of this batch, has the id with other bytes. */
  | { code: 'id-taken'; ids: FactId[] }
  /** Streams that hold another number of facts than the decision saw. */
  | { code: 'heads-moved'; streams: { stream: StreamId; expected: number; found: number }[] }
  | { code: 'tenant-unknown' }

/** A fact received: now, or earlier when the same bytes were sent before. */
export type Appended = { id: FactId; stream: StreamId; sha256: Sha256; receipt: Receipt; isNew: boolean }
