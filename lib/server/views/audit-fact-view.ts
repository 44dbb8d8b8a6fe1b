import { FactId, type StreamId } from '@/lib/domain/facts/fact'
import type { Fact } from '@/lib/domain/facts/fact-kinds'
import { kindWords } from '@/lib/domain/facts/fact-words'
import { citesOf } from '@/lib/domain/fold/cites-of'
import { clockErrors } from '@/lib/domain/fold/clock-errors'
import { done, type Result, refused } from '@/lib/domain/result'
import { leafOfRow } from '@/lib/server/log/leaf-of-row'
import { inclusionProofs } from '@/lib/server/log/proofs'
import { clockChecksOf, factsNaming, factsOfIds, type NamingFact } from '@/lib/server/store/naming-trail'
import { trailRow } from '@/lib/server/store/search-trail'
import type { PlaceInLog } from './audit-drawn-line'
import { type AuditFault, loadAuditHead, textOf } from './audit-head-view'
import { factOfRow, type TrailLineOfAudit, trailLineOf } from './audit-line'
import { loadNames, type ReadingDesk } from './reading-desk'

export type FactLink = { id: string; leaf: number; stream: string; what: string }
export type AuditFact = {
  line: TrailLineOfAudit
  origin: string
  bytes: string
  pretty: string
  leaf: string
  inLog: PlaceInLog
  checkpoint: string
  /** Error of the device's clock as known from the entry itself and from the check that followed on the same day, in milliseconds; null where nothing is known. */
  clockErrorMs: number | null
  corrects: FactLink[]
  correctedBy: FactLink[]
  names: FactLink[]
  namedBy: FactLink[]
  cites: StreamId[]
}

/** One fact with its exact bytes, its place in the log and what it has to do with others. Refuses as `loadAuditHead` does, and `not-found`. */
export async function loadAuditFact(reading: ReadingDesk, id: string): Promise<Result<AuditFact, AuditFault>> {
  const head = await loadAuditHead(reading)
  if (!head.ok) return head
  const { store, actor } = reading.desk
  const { hidden } = head.value.reach
  const known = FactId.safeParse(id)
  const row = known.success ? await trailRow(store, actor.tenant, known.data, hidden) : null
  if (!row) return refused({ code: 'not-found' })
  const { size, root, origin, text } = head.value.log.checkpoint
  const [proof] = await inclusionProofs(store, actor.tenant, [row.leaf], size)
  const fact = factOfRow(row)
  const naming = await factsNaming(store, actor.tenant, row, hidden)
  const named = (
    await factsOfIds(store, actor.tenant, fact ? idsIn(fact.body).filter((one) => one !== fact.id) : [], hidden)
  ).map(linkOf)
  const target = fact ? targetOf(fact) : null
  const bytes = textOf(row.bytes)
  return done({
    line: trailLineOf(row, await loadNames(reading.desk)),
    origin,
    bytes,
    pretty: fact ? JSON.stringify(JSON.parse(bytes), null, 2) : bytes,
    leaf: textOf(leafOfRow(actor.tenant, row)),
    inLog: { index: row.leaf, size, root, proof: proof?.proof ?? [] },
    checkpoint: text,
    clockErrorMs: fact ? await clockErrorOf(reading, fact) : null,
    corrects: named.filter((one) => one.id === target),
    correctedBy: naming.filter(isCorrection).map(linkOf),
    names: named.filter((one) => one.id !== target),
    namedBy: naming.filter((one) => !isCorrection(one)).map(linkOf),
    cites: fact ? citesOf(fact).filter((one) => !hidden.includes(one)) : [],
  })
}

async function clockErrorOf({ desk, actor }: ReadingDesk, fact: Fact): Promise<number | null> {
  const checks = await clockChecksOf(desk.store, actor.tenant, fact.device.id)
  return clockErrors(checks, [fact])[fact.id] ?? fact.device.clockOffsetMs
}

/** What a fact says it corrects: an own entry, or a qualification. */
function targetOf(fact: Fact): string | null {
  if (fact.kind === 'corrected') return fact.body.target
  return fact.kind === 'qualification-recorded' ? (fact.body.corrects ?? null) : null
}

function isCorrection(one: NamingFact): boolean {
  return one.kind === 'corrected' || one.kind === 'qualification-recorded'
}

function linkOf({ id, leaf, stream, kind }: NamingFact): FactLink {
  return { id, leaf, stream, what: kindWords(kind) }
}

/** Every text of a body that has the form of a fact's id. */
function idsIn(body: unknown): FactId[] {
  const found = new Set<FactId>()
  const walk = (value: unknown): void => {
    if (typeof value === 'string') {
      const id = FactId.safeParse(value)
      if (id.success) found.add(id.data)
    } else if (typeof value === 'object' && value !== null) for (const one of Object.values(value)) walk(one)
  }
  walk(body)
  return [...found]
}
