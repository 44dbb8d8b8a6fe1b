import * as z from 'zod'
import { FactId, StreamId, streamKind } from '@/lib/domain/facts/fact'
import { DEVICE_BODIES } from '@/lib/domain/facts/project-bodies'
import { refused } from '@/lib/domain/result'
import { authorise } from './authorise'
import { command } from './command'
import { Entry } from './entry'
import { keptBefore } from './kept-before'

const EndSigningKey = z.strictObject({
  stream: StreamId.refine((id) => streamKind(id) === 'device', 'a device'),
  body: DEVICE_BODIES['signing-key-ended'],
  id: FactId.optional(),
  device: Entry.device,
})

/**
 * End a device's key, now: its holder or an administrator, with the reason. What it signed before stays signed; what is received afterwards is refused. Refuses `invalid`, `not-found`, `not-allowed`.
 */
export const endSigningKey = command(EndSigningKey, async (desk, form) => {
  const { stream, body, id, device } = form
  const facts = (await desk.factsOf(stream)) ?? []
  const key = facts.find((one) => one.kind === 'signing-key-taken' && one.id === body.key)
  if (!key) return refused({ code: 'not-found' })
  const barred =
    key.observedBy === desk.actor.person ? null : authorise(desk.actor, 'any', desk.today(null), 'administer')
  if (barred) return refused(barred)
  const fact = desk.make({ stream, kind: 'signing-key-ended', body, entry: { id, device }, offset: null })
  return keptBefore(fact, facts) ?? desk.append([fact], [])
})
