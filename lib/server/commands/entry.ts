import * as z from 'zod'
import { FactId, Late } from '@/lib/domain/facts/fact'
import { Heads } from '@/lib/domain/facts/repair-bodies'
import { Moment } from '@/lib/domain/time'

/**
 * What every command takes beside its stream and body. Absent times mean now. `id` is made on the device, so that sending twice records once.
 * `heads` are what a decision saw: stream and number of facts; a decision whose heads moved is refused.
 */
export const Entry = {
  id: FactId.optional(),
  observedAt: Moment.optional(),
  enteredAt: Moment.optional(),
  late: Late.optional(),
  device: z.strictObject({ id: z.string().min(1).max(60), clockOffsetMs: z.int().nullable() }).optional(),
  heads: Heads.optional(),
} as const

const EntryForm = z.strictObject(Entry)
export type Entry = z.infer<typeof EntryForm>

/**
 * What a decision takes beside its own fields. It is made now: a time of the caller's choice could place a release before the step that went ahead
 * without it.
 */
export const DecisionEntry = { id: Entry.id, device: Entry.device } as const

/**
 * The same for a decision that may be made on a device without a network: with both times, which must be one and fit what the device sent before (see `misdated`). It is then kept as made, whether or not
 * the record moved on meanwhile.
 */
export const DeviceDecisionEntry = {
  ...DecisionEntry,
  observedAt: Entry.observedAt,
  enteredAt: Entry.enteredAt,
} as const
