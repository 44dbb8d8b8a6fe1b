import { type FactId, StreamId, streamKind } from '@/lib/domain/facts/fact'
import type { SentEntry } from '@/lib/domain/outbox/exchange'
import { conflictIdOf, conflictNote } from './conflict-note'
import type { Desk } from './desk'
import type { MovedHead } from './refusal'

/**
 * Note in the device's stream that a decision made without a network met facts that it had not seen and was not applied: which decision, by whom, on how many facts, and what had come meanwhile.
 * The decision itself stays on the device until its maker decides anew. Noted once, however often the entry is sent.
 * @returns the note's id; null when the decision is of no repair or names no device
 */
export async function noteConflict(desk: Desk, entry: SentEntry, moved: readonly MovedHead[]): Promise<FactId | null> {
  const repair = StreamId.safeParse(entry.input.stream)
  const device = deviceOf(entry.input)
  const stream = StreamId.safeParse(`device:${device?.id}`)
  if (!repair.success || streamKind(repair.data) !== 'repair' || !device || !stream.success) return null
  const facts = (await desk.factsOf(repair.data)) ?? []
  if (facts.length === 0) return null
  const id = conflictIdOf(entry.id)
  if ((await desk.factsOf(stream.data))?.some((fact) => fact.id === id)) return id
  const { point, attempt, reason } = textsOf(entry.input.body)
  const at = point ? ` of point ${point}, attempt ${attempt ?? '?'},` : ''
  const heads = moved.map((one) => `${one.stream}: ${one.seen} seen, ${one.now} there`).join('; ')
  const note = conflictNote(desk, {
    decision: entry.id,
    isKept: false,
    repair: repair.data,
    device,
    facts,
    seen: moved.find((one) => one.stream === repair.data)?.seen ?? facts.length,
    point,
    words: `Made without a network and not applied: ${entry.command}${at} by ${desk.actor.name}. ${heads}. ${reason ?? ''}`,
  })
  const kept = await desk.append([note], [])
  return kept.ok ? id : null
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
