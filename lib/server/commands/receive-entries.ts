import { Late, type Sha256, type StreamId } from '@/lib/domain/facts/fact'
import type { Fact } from '@/lib/domain/facts/fact-kinds'
import { REPAIR_BODIES } from '@/lib/domain/facts/repair-bodies'
import { isSameJson } from '@/lib/domain/fold/apply-correction'
import {
  type EntryAnswer,
  type EntryRefusal,
  type ExchangeRefusal,
  holdsBack,
  isDecision,
  OLDEST_OUTBOX_VERSION,
  OUTBOX_COMMANDS,
  OUTBOX_VERSION,
  type OutboxCommand,
  OutboxRequest,
  SentEntry,
} from '@/lib/domain/outbox/exchange'
import { done, type Result, refused } from '@/lib/domain/result'
import type { Actor } from '@/lib/server/auth/actor'
import { loadStream } from '@/lib/server/store/load-stream'
import { invalid } from './command'
import type { Desk, Kept } from './desk'
import { openDesk } from './open-desk'
import { noteConflict } from './receive-conflict'
import { pieceFolderOf } from './receive-piece'
import { attachedDigest, receivedBy } from './receive-table'
import type { Refusal } from './refusal'

const ABOUT_PHOTO = REPAIR_BODIES['photo-attached'].unwrap().omit({ photo: true })

/** Fields of an entry that its fact holds as sent; a fact known under the id with others is another fact. */
const STATED = ['observedAt', 'enteredAt', 'late', 'device'] as const
const SIGNED_WITH_KEY: ReadonlySet<OutboxCommand> = new Set(['sign-on-device', 'release-on-device', 'accept-on-device'])

/**
 * Receive entries of an outbox in their order: `{ v, tenant, person, entries }`. Each is taken in by its own command, which authorises by itself, and gets its own answer; a refused one holds back
 * later ones of its stream, though never an observation behind a decision. Received twice is received once. The whole request is refused with `invalid`, `version-too-old`, `version-too-new`, `not-found` for another tenant's, and
 * `not-own-entry` for another person's: these are sent under that person's own session.
 */
export async function receiveEntries(
  actor: Actor,
  input: unknown,
): Promise<Result<EntryAnswer[], Refusal | ExchangeRefusal>> {
  const v = typeof input === 'object' && input !== null && 'v' in input && typeof input.v === 'number' ? input.v : null
  const versions = { oldest: OLDEST_OUTBOX_VERSION, newest: OUTBOX_VERSION }
  if (v !== null && v < OLDEST_OUTBOX_VERSION) return refused({ code: 'version-too-old', ...versions })
  if (v !== null && v > OUTBOX_VERSION) return refused({ code: 'version-too-new', ...versions })
  const request = OutboxRequest.safeParse(input)
  if (!request.success) return refused(invalid(request.error))
  if (request.data.tenant !== actor.tenant) return refused({ code: 'not-found' })
  if (request.data.person !== actor.person) return refused({ code: 'not-own-entry' })
  const desk = await openDesk(actor)
  const heldBy = new Map<string, { id: string; command: OutboxCommand | null }[]>()
  const answers: EntryAnswer[] = []
  for (const json of request.data.entries) {
    const answer = await receiveOne(desk, json, heldBy)
    const stream = streamIn(json)
    if (answer.kind !== 'received' && answer.kind !== 'held' && stream)
      heldBy.set(stream, [...(heldBy.get(stream) ?? []), { id: answer.id, command: commandIn(json) }])
    answers.push(answer)
  }
  return done(answers)
}

async function receiveOne(
  desk: Desk,
  json: unknown,
  heldBy: ReadonlyMap<string, readonly { id: string; command: OutboxCommand | null }[]>,
): Promise<EntryAnswer> {
  const parsed = SentEntry.safeParse(json)
  if (!parsed.success) return { kind: 'refused', id: idIn(json), refusal: invalid(parsed.error) }
  const entry = parsed.data
  const behind = (heldBy.get(String(entry.input.stream)) ?? []).find(
    (one) => one.command === null || holdsBack(one.command, entry.command),
  )
  if (behind) return { kind: 'held', id: entry.id, behind: behind.id }
  const pieces = pieceFolderOf(desk.store)
  for (const sha256 of entry.photos) {
    const { isWhole } = await pieces.standingOf(desk.actor, sha256)
    if (!isWhole) return { kind: 'photo-missing', id: entry.id, sha256 }
  }
  const outcome = await take(desk, entry)
  if (!outcome.ok) return { kind: 'refused', id: entry.id, refusal: outcome.error }
  for (const sha256 of entry.photos) await pieces.markTaken(desk.actor, sha256)
  return outcome.value
}

async function take(desk: Desk, entry: SentEntry): Promise<Result<EntryAnswer, EntryRefusal>> {
  const [photo] = entry.photos
  const received = receivedBy(entry.command, async () => {
    const bytes = photo ? await bytesOf(desk, photo) : null
    return bytes ? done(bytes) : refused({ code: 'photo-refused', reason: 'empty', detail: '' })
  })
  const missing = !isDecision(entry.command) ? STATED.filter((name) => name !== 'late' && !(name in entry.input)) : []
  if (missing.length > 0)
    return refused({ code: 'invalid', fields: Object.fromEntries(missing.map((name) => [name, ['is missing']])) })
  const outcome = await received(desk.actor, { ...entry.input, id: entry.id })
  if (outcome.ok) return receiptOf(desk, entry, outcome.value)
  if (outcome.error.code !== 'heads-moved' || !entry.madeOffline) return refused(outcome.error)
  return refused({ ...outcome.error, conflict: await noteConflict(desk, entry, outcome.error.moved) })
}

/** The first receipt of the fact, once it is seen to say what was sent: another statement under a known id is refused `id-taken`. */
async function receiptOf(desk: Desk, entry: SentEntry, kept: Kept): Promise<Result<EntryAnswer, EntryRefusal>> {
  const loaded = await loadStream(desk.store, desk.actor.tenant, kept.stream)
  const fact = loaded.facts.find((one) => one.id === entry.id)
  const receipt = fact && loaded.receipts.get(fact.id)
  if (!fact || !receipt) throw new Error('a command answered for a fact that is not in its stream')
  const isAsStated = STATED.every(
    (name) => !(name in entry.input) || isSameJson(fact[name], plainly(name, entry.input[name])),
  )
  // what a device's key signed is the signer's, whoever sends it
  const enterer = SIGNED_WITH_KEY.has(entry.command) ? entry.input.signer : desk.actor.person
  const isOwn = fact.enteredBy === enterer && fact.observedBy === (entry.input.observedBy ?? fact.enteredBy)
  const isSame = isOwn && isAsStated && isSamePhoto(fact, entry, kept)
  if (!isSame) return refused({ code: 'id-taken' })
  const { receivedAt, position } = receipt
  return done({ kind: 'received', id: entry.id, receipt: { receivedAt, position } })
}

/** A late entry's reason is kept without the blanks around it. */
function plainly(name: (typeof STATED)[number], sent: unknown): unknown {
  const late = name === 'late' ? Late.safeParse(sent) : null
  return late?.success ? late.data : sent
}

function isSamePhoto(fact: Fact, entry: SentEntry, kept: Kept): boolean {
  if (entry.command !== 'attach-photo' || fact.kind !== 'photo-attached') return true
  const { photo, ...body } = fact.body
  const sent = ABOUT_PHOTO.safeParse(entry.input.body)
  return attachedDigest(kept) === entry.photos[0] && photo.sha256 === entry.photos[0] && isSameJson(body, sent.data)
}

async function bytesOf(desk: Desk, sha256: Sha256): Promise<Uint8Array | null> {
  return (await pieceFolderOf(desk.store).read(desk.actor, sha256)) ?? desk.store.photos.read(sha256)
}

function streamIn(json: unknown): StreamId | null {
  const input = typeof json === 'object' && json !== null && 'input' in json ? json.input : null
  const stream = typeof input === 'object' && input !== null && 'stream' in input ? input.stream : null
  return typeof stream === 'string' ? (stream as StreamId) : null
}

function commandIn(json: unknown): OutboxCommand | null {
  const command = typeof json === 'object' && json !== null && 'command' in json ? json.command : null
  return OUTBOX_COMMANDS.find((one) => one === command) ?? null
}

function idIn(json: unknown): string {
  return typeof json === 'object' && json !== null && 'id' in json && typeof json.id === 'string' ? json.id : ''
}
