import { createHash } from 'node:crypto'
import { FactId, StreamId, streamKind } from '@/lib/domain/facts/fact'
import type { Fact } from '@/lib/domain/facts/fact-kinds'
import type { SentEntry } from '@/lib/domain/outbox/exchange'
import type { Desk } from './desk'
import type { MovedHead } from './refusal'

const FACTS_AT_MOST = 20
const REMARK_LENGTH = 900

/**
 * Note in the device's stream that a decision made without a network met facts that it had not seen: which decision, by whom, on how many facts, and what had come meanwhile.
 * Nothing of it is applied; the decision itself stays on the device until its maker decides anew. Noted once, however often the entry is sent.
 * @returns the note's id; null when the decision is of no repair or names no device
 */
export async function noteConflict(desk: Desk, entry: SentEntry, moved: readonly MovedHead[]): Promise<FactId | null> {
  const repair = StreamId.safeParse(entry.input.stream)
  const device = deviceOf(entry.input)
  const stream = StreamId.safeParse(`device:${device?.id}`)
  if (!repair.success || streamKind(repair.data) !== 'repair' || !device || !stream.success) return null
  const facts = await desk.factsOf(repair.data)
  const seen = moved.find((one) => one.stream === repair.data)?.seen ?? facts?.length ?? 0
  const { point, attempt, reason } = textsOf(entry.input.body)
  const ofPoint = (fact: Fact) => 'point' in fact.body && fact.body.point === point
  const unseen = (facts ?? []).slice(seen)
  // the fold finds the point of a conflict by its facts: one of the point goes with them
  const known = (facts ?? []).slice(0, seen).findLast(ofPoint)
  const named = [...unseen.filter(ofPoint), ...unseen.filter((fact) => !ofPoint(fact))].slice(0, FACTS_AT_MOST - 1)
  const ids = [...(known && !unseen.some(ofPoint) ? [known] : []), ...named].map((fact) => fact.id)
  if (ids.length === 0) return null
  const id = noteIdOf(entry.id)
  if ((await desk.factsOf(stream.data))?.some((fact) => fact.id === id)) return id
  const at = point ? ` of point ${point}, attempt ${attempt ?? '?'},` : ''
  const heads = moved.map((one) => `${one.stream}: ${one.seen} seen, ${one.now} there`).join('; ')
  const remark = `Made without a network and not applied: ${entry.command}${at} by ${desk.actor.name}. ${heads}. ${reason ?? ''}`
  const body = { repair: repair.data, facts: ids, remark: remark.trim().slice(0, REMARK_LENGTH) }
  const note = desk.make({ stream: stream.data, kind: 'conflict-noted', body, entry: { id, device }, offset: null })
  const kept = await desk.append([note], [])
  return kept.ok ? id : null
}

/** The id of the note about a decision: always the same one, so that it is kept once. @source RFC 9562 5.8 (UUID version 8) */
function noteIdOf(decision: FactId): FactId {
  const hex = createHash('sha256').update(`conflict ${decision}`).digest('hex')
  return FactId.parse(
    `${hex.slice(0, 8)}-${hex.slice(8, 12)}-8${hex.slice(13, 16)}-8${hex.slice(17, 20)}-${hex.slice(20, 32)}`,
  )
}

function deviceOf(input: SentEntry['input']): { id: string; clockOffsetMs: number | null } | null {
  const { device } = input
  if (typeof device !== 'object' || device === null || !('id' in device) || typeof device.id !== 'string') return null
  const offset = 'clockOffsetMs' in device && typeof device.clockOffsetMs === 'number' ? device.clockOffsetMs : null
  return { id: device.id, clockOffsetMs: offset }
}

function textsOf(body: unknown): { point?: string; attempt?: string; reason?: string } {
  const fields = typeof body === 'object' && body !== null ? (body as Record<string, unknown>) : {}
  return Object.fromEntries(
    ['point', 'attempt', 'reason'].flatMap((name) =>
      typeof fields[name] === 'string' || typeof fields[name] === 'number' ? [[name, String(fields[name])]] : [],
    ),
  )
}
