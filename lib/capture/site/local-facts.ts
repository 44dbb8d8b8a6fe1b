import type { OutboxEntry } from '@/lib/capture/outbox/outbox-entry'
import { type Fact, type FactKind, parseFact } from '@/lib/domain/facts/fact-kinds'
import type { OutboxCommand } from '@/lib/domain/outbox/exchange'

/** Entries of a repair's own stream become these facts. Photos count as such once the server took them in. */
const KIND_OF: Partial<Record<OutboxCommand, FactKind>> = {
  'open-repair': 'repair-opened',
  'record-point': 'recorded',
  'correct-record': 'corrected',
  'note-event': 'event-noted',
  'record-material-used': 'material-used',
  'open-attempt': 'attempt-opened',
  'mark-not-applicable': 'marked-not-applicable',
  'choose-governs': 'governs-chosen',
  'settle-conflict': 'conflict-settled',
  'submit-point': 'submitted',
  'refuse-release': 'release-refused',
  'withdraw-release': 'release-withdrawn',
  'sign-on-device': 'signed',
  'release-on-device': 'released',
  'accept-on-device': 'accepted',
}

/**
 * The facts that this device's entries will become, to be folded beside a pack that has them not yet: byte for byte those that the server will keep. What was refused or set aside is not among them: it
 * is not in the record, and a person deals with it first.
 */
export function localFacts(entries: readonly OutboxEntry[], known: ReadonlySet<string>): Fact[] {
  return entries.flatMap((entry) =>
    entry.state === 'refused' || entry.state === 'set aside' || known.has(entry.id) ? [] : factsOfEntry(entry),
  )
}

/** The facts of one entry: none for a photo or what is of another stream, two for a release or an acceptance, which bring their signature. */
export function factsOfEntry({ id, command, person, input }: OutboxEntry): Fact[] {
  const kind = KIND_OF[command]
  if (!kind) return []
  const { stream, body, observedAt, enteredAt, late, device, signer = person, signature } = input
  const { observedBy = signer } = input
  const envelope = {
    v: 1,
    stream,
    observedAt,
    observedBy,
    enteredAt,
    enteredBy: signer,
    ...(late === undefined ? {} : { late }),
    device,
  }
  const beside =
    typeof signature === 'object' && signature !== null && 'id' in signature && 'body' in signature
      ? [{ ...envelope, id: signature.id, kind: 'signed', body: signature.body }]
      : []
  const parsed = [{ ...envelope, id, kind, body }, ...beside].map((fact) => parseFact(fact))
  return parsed.flatMap((fact) => (fact.ok ? [fact.value] : []))
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

/** Photos on their way, as the fold is told of them: those that a pack has not (`known`), sent or not, but for what was refused or set aside. */
export function photosToCome(
  entries: readonly OutboxEntry[],
  stream: string,
  known: ReadonlySet<string>,
): { point: string; attempt: number; demand: string }[] {
  return entries.flatMap(({ id, command, state, input }) => {
    const { body } = input
    const isToCome = input.stream === stream && state !== 'refused' && state !== 'set aside' && !known.has(id)
    if (!isToCome || command !== 'attach-photo' || body === null || typeof body !== 'object') return []
    const { point, attempt, demand } = body as { point?: unknown; attempt?: unknown; demand?: unknown }
    return typeof point === 'string' && typeof attempt === 'number' && typeof demand === 'string'
      ? [{ point, attempt, demand }]
      : []
  })
}
