import type { OutboxEntry } from '@/lib/capture/outbox/outbox-entry'
import { type Fact, type FactKind, parseFact } from '@/lib/domain/facts/fact-kinds'
import type { OutboxCommand } from '@/lib/domain/outbox/exchange'

/** Observations of a repair's own stream become these facts. Photos count once the server took them in; decisions are made when it receives them. */
const KIND_OF: Partial<Record<OutboxCommand, FactKind>> = {
  'record-point': 'recorded',
  'correct-record': 'corrected',
  'note-event': 'event-noted',
  'record-material-used': 'material-used',
}

/**
 * The facts that this device's entries will become, to be folded beside a pack that has them not yet. What was refused or set aside is not among them: it is not in the record, and a person
 * deals with it first.
 */
export function localFacts(entries: readonly OutboxEntry[], known: ReadonlySet<string>): Fact[] {
  return entries.flatMap((entry) => {
    const kind = KIND_OF[entry.command]
    if (!kind || known.has(entry.id) || entry.state === 'refused' || entry.state === 'set aside') return []
    const { stream, body, observedAt, enteredAt, late, device } = entry.input
    const fact = parseFact({
      v: 1,
      id: entry.id,
      stream,
      kind,
      observedAt,
      observedBy: entry.person,
      enteredAt,
      enteredBy: entry.person,
      ...(late === undefined ? {} : { late }),
      device,
      body,
    })
    return fact.ok ? [fact.value] : []
  })
}

/** Entries of a repair's stream that the server has not. */
export function unsentOf(entries: readonly OutboxEntry[], stream: string): OutboxEntry[] {
  return entries.filter(
    (entry) => entry.input.stream === stream && entry.state !== 'sent' && entry.state !== 'set aside',
  )
}

/** Photos of a point and attempt on this device that are not in the record yet, by the demand that they answer; free ones under the empty name. */
export function unsentPhotos(
  entries: readonly OutboxEntry[],
  at: { stream: string; point: string; attempt: number },
): Map<string, OutboxEntry[]> {
  const found = new Map<string, OutboxEntry[]>()
  for (const entry of unsentOf(entries, at.stream)) {
    const { body } = entry.input
    if (entry.command !== 'attach-photo' || body === null || typeof body !== 'object') continue
    const said = body as { point?: unknown; attempt?: unknown; demand?: unknown }
    if (said.point !== at.point || said.attempt !== at.attempt) continue
    const demand = typeof said.demand === 'string' ? said.demand : ''
    found.set(demand, [...(found.get(demand) ?? []), entry])
  }
  return found
}
