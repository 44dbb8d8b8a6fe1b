import * as z from 'zod'
import { FactId, StreamId, streamKind, streamName, streamOf } from '@/lib/domain/facts/fact'
import { BLOCK_AT_MOST, NumberPrefix } from '@/lib/domain/facts/register-bodies'
import { NUMBERS_STREAM, type NumberBlock, nextBlock, numberBlocks } from '@/lib/domain/numbers/number-blocks'
import { done, refused } from '@/lib/domain/result'
import { listStreams } from '@/lib/server/store/list-streams'
import { authorise } from './authorise'
import { command } from './command'
import { placeOf } from './place-of'

/** Others may allot at the same moment; each time one of them comes first, the block is chosen anew. */
const TRIES_AT_MOST = 20

/** A device as its facts name it. */
export const DeviceName = z
  .string()
  .min(1)
  .max(60)
  .refine((name) => StreamId.safeParse(`device:${name}`).success, 'a device')

const AllotNumbers = z.strictObject({
  id: FactId,
  device: DeviceName,
  project: StreamId.refine((id) => streamKind(id) === 'project', 'a project'),
  prefix: NumberPrefix,
  digits: z.int().min(1).max(6),
  count: z.int().min(1).max(BLOCK_AT_MOST),
})

/**
 * Allot the next free block of repair numbers to a device: `{ id, device, project, prefix, digits, count }`. The block is appended on the head of the one stream of allotments that it was chosen on, so no
 * number is ever in two of them; asked again with the same `id` it is the same block. Refuses `not-found`, `not-allowed`, `id-taken`, and `not-decided` when the numbers after the prefix are at their end.
 */
export const allotNumbers = command(AllotNumbers, async (desk, ask) => {
  const project = await desk.factsOf(ask.project)
  if (!project) return refused({ code: 'not-found' })
  const { offset } = (await placeOf(desk, ask.project, project)) ?? { offset: null }
  const barred = authorise(desk.actor, ask.project, desk.today(offset), 'open repair')
  if (barred) return refused(barred)
  const device = streamOf('device', ask.device)
  for (let tries = 1; ; tries += 1) {
    const facts = (await desk.factsOf(NUMBERS_STREAM)) ?? []
    const before = facts.find((one) => one.id === ask.id)
    if (before) {
      const isSame =
        before.kind === 'numbers-allotted' && before.body.device === device && before.enteredBy === desk.actor.person
      return isSame ? done<NumberBlock>(before.body) : refused({ code: 'id-taken' })
    }
    const borne = await listStreams(desk.store, desk.actor.tenant, 'repair')
    const next = nextBlock(
      ask,
      numberBlocks(facts),
      borne.map((one) => streamName(one.stream)),
    )
    if (!next.ok)
      return refused({ code: 'not-decided', why: 'numbers-exhausted', detail: [`${ask.prefix}${next.error.last}`] })
    const body: NumberBlock = { device, project: ask.project, ...next.value }
    const fact = desk.make({ stream: NUMBERS_STREAM, kind: 'numbers-allotted', body, entry: { id: ask.id }, offset })
    const kept = await desk.append([fact], [{ stream: NUMBERS_STREAM, length: facts.length }])
    if (kept.ok) return done(body)
    if (kept.error.code !== 'heads-moved' || tries === TRIES_AT_MOST) return kept
  }
})
