import * as z from 'zod'
import { streamName, streamOf } from '@/lib/domain/facts/fact'
import { ofKind } from '@/lib/domain/fold/order-facts'
import { NUMBERS_STREAM, numberBlocks, numbersLeft, partsOfNumber } from '@/lib/domain/numbers/number-blocks'
import { done, refused } from '@/lib/domain/result'
import { listStreams } from '@/lib/server/store/list-streams'
import { loadStreams } from '@/lib/server/store/load-stream'
import { DeviceName } from './allot-numbers'
import { authorise } from './authorise'
import { command } from './command'
import { placeOf } from './place-of'

const PREFIXES_AT_MOST = 6

const ListNumberGrounds = z.strictObject({ device: DeviceName })

/** What a person may take numbers along for: projects where they open repairs, with the numbers that the device has left there, and prefixes in use. */
export type NumberGrounds = {
  projects: { project: string; title: string; left: number }[]
  prefixes: { prefix: string; digits: number }[]
}

/** Projects for which the asker may take repair numbers along on a device: `{ device }`. Refuses `not-allowed` when there is none. */
export const listNumberGrounds = command(ListNumberGrounds, async (desk, { device }) => {
  const { actor, store } = desk
  const streams = (await listStreams(store, actor.tenant, 'project')).map((one) => one.stream)
  const { facts } = await loadStreams(store, actor.tenant, streams)
  const blocks = numberBlocks((await desk.factsOf(NUMBERS_STREAM)) ?? [])
  const numbers = (await listStreams(store, actor.tenant, 'repair')).map((one) => streamName(one.stream))
  const left = numbersLeft(blocks, streamOf('device', device), new Set(numbers))
  const projects: NumberGrounds['projects'] = []
  let barred = authorise(actor, 'any', desk.today(null), 'open repair')
  if (barred) return refused(barred)
  for (const opened of ofKind(facts, 'project-opened')) {
    const place = await placeOf(
      desk,
      opened.stream,
      facts.filter((one) => one.stream === opened.stream),
    )
    barred = authorise(actor, opened.stream, desk.today(place?.offset ?? null), 'open repair')
    if (barred) continue
    const own = left.filter((one) => one.block.project === opened.stream)
    projects.push({
      project: opened.stream,
      title: `${streamName(opened.stream)} ${opened.body.name}`,
      left: own.length,
    })
  }
  const used = [
    ...blocks.map(({ prefix, digits }) => ({ prefix, digits })),
    ...numbers.flatMap((one) => partsOfNumber(one) ?? []),
  ]
  const prefixes = new Map<string, { prefix: string; digits: number }>()
  for (const { prefix, digits } of used) {
    const known = prefixes.get(prefix.toLowerCase())
    prefixes.set(prefix.toLowerCase(), { prefix, digits: Math.max(digits, known?.digits ?? 0) })
  }
  return done<NumberGrounds>({ projects, prefixes: [...prefixes.values()].slice(-PREFIXES_AT_MOST) })
})
