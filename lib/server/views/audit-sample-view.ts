import { done, type Result, refused } from '@/lib/domain/result'
import type { Moment } from '@/lib/domain/time'
import type { Desk } from '@/lib/server/commands/desk'
import { inclusionProofs } from '@/lib/server/log/proofs'
import { listStreams } from '@/lib/server/store/list-streams'
import { chainOf } from './audit-chain'
import { drawByNumber } from './audit-draw'
import { type DrawnLine, drawnLine } from './audit-drawn-line'
import { type AuditFault, type AuditHead, loadAuditHead } from './audit-head-view'
import { countPopulation, type DrawnReading, type Population, readingsOfNumbers } from './audit-population'
import { parseSample, type SampleAsked, type SampleFault, type SampleParams } from './audit-sample-params'
import { loadNames, type ReadingDesk } from './reading-desk'

export type AuditSample = {
  head: AuditHead
  asked: SampleAsked
  faults: SampleFault[]
  /** Null until a seed was given, and while something asked for is wrong. */
  draw: {
    readingCount: number
    recordCount: number
    brokenLeaves: number[]
    lines: DrawnLine[]
    drawnAt: Moment
  } | null
  repairs: string[]
}

/**
 * Draw readings at random by a seed, each with all that stands behind it. The population is that of the first `size` leaves of the log, so that the same
 * seed, size and filters give the same draw later. Refuses as `loadAuditHead` does.
 */
export async function loadAuditSample(
  reading: ReadingDesk,
  params: SampleParams,
  utcOffset: string,
): Promise<Result<AuditSample, AuditFault>> {
  const head = await loadAuditHead(reading)
  if (!head.ok) return refused(head.error)
  const { desk, actor } = reading
  const { hidden } = head.value.reach
  const { asked, faults } = parseSample(params, utcOffset, head.value.log.checkpoint.size)
  const shut = new Set<string>(hidden)
  const repairs = (await listStreams(desk.store, actor.tenant, 'repair')).filter((one) => !shut.has(one.stream))
  const sample = { head: head.value, asked, faults, repairs: repairs.map((one) => one.stream.slice('repair:'.length)) }
  if (asked.seed === null || faults.length > 0) return done({ ...sample, draw: null })
  const query = { ...asked, hidden }
  const population = await countPopulation(desk.store, actor.tenant, query)
  const numbers = drawByNumber(asked.seed, population.readingCount, asked.count)
  const drawn = await readingsOfNumbers(desk.store, actor.tenant, query, population, numbers)
  return done({
    ...sample,
    draw: {
      ...countsOf(population),
      drawnAt: desk.now(null),
      lines: await linesOf(desk, head.value, drawn),
    },
  })
}

function countsOf({ readingCount, records, brokenLeaves }: Population) {
  return { readingCount, recordCount: records.length, brokenLeaves }
}

async function linesOf(desk: Desk, head: AuditHead, drawn: readonly DrawnReading[]): Promise<DrawnLine[]> {
  const names = await loadNames(desk)
  const { size, root } = head.log.checkpoint
  const { tenant } = desk.actor
  const proofs = await inclusionProofs(
    desk.store,
    tenant,
    drawn.map((one) => one.row.leaf),
    size,
  )
  const lines: DrawnLine[] = []
  for (const [at, one] of drawn.entries())
    lines.push({
      ...drawnLine(tenant, one, await desk.stateOf(one.fact.stream), names),
      inLog: {
        index: one.row.leaf,
        size,
        root,
        proof: proofs[at]?.proof ?? [],
      },
      chain: await chainOf(desk, one.fact, one.reading, names),
    })
  return lines
}
