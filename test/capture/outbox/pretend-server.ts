import { createHash } from 'node:crypto'
import type { OutboxOwner } from '@/lib/capture/outbox/outbox-entry'
import type { OutboxExchange, PieceReply, Standstill } from '@/lib/capture/outbox/outbox-exchange'
import { type EntryAnswer, holdsBack, PIECE_BYTES_AT_MOST, type SentEntry } from '@/lib/domain/outbox/exchange'

/** The page was closed or crashed in the middle of a sending: nothing after it runs. */
export class PageGone extends Error {}

/** What happens to a message: it does not arrive, its reply does not, or the page is gone before or after it arrived. */
export type Fate = 'lost' | 'reply lost' | 'page gone before' | 'page gone after'

export type Weather = { isOnline: boolean; isSignedIn: boolean; isVersionOld: boolean; fates: Fate[]; nowMs: number }

type Kept = { stream: string; said: string; position: number; sends: number }

/** A server in memory that keeps the exchange's promises, in weather that the test makes. It counts what it received and notes what should never have been sent. */
export function createPretendServer(weather: Weather) {
  const kept = new Map<string, Kept>()
  const pieces = new Map<string, Buffer[]>()
  const whole = new Set<string>()
  const lengths = new Map<string, number>()
  const wrongs: string[] = []
  const inFlight = new Set<string>()

  const standstill = (): Standstill | null => {
    if (!weather.isOnline) return { kind: 'no-network' }
    if (weather.isVersionOld) return { kind: 'version-too-old' }
    return weather.isSignedIn ? null : { kind: 'signed-out' }
  }

  async function carry<T>(receive: () => Promise<T>): Promise<T | Standstill> {
    const stopped = standstill()
    if (stopped) return stopped
    const fate = weather.fates.shift()
    if (fate === 'lost') return { kind: 'no-network' }
    if (fate === 'page gone before') throw new PageGone()
    const reply = await receive()
    if (fate === 'page gone after') throw new PageGone()
    return fate === 'reply lost' ? { kind: 'no-network' } : reply
  }

  function receive(owner: OutboxOwner, entry: SentEntry, heldBy: Map<string, SentEntry[]>): EntryAnswer {
    const { id } = entry
    const stream = String(entry.input.stream)
    const behind = (heldBy.get(stream) ?? []).find((one) => holdsBack(one.command, entry.command))
    if (behind) return { kind: 'held', id, behind: behind.id }
    const missing = entry.photos.find((sha256) => !whole.has(sha256))
    const said = JSON.stringify([owner, entry])
    const known = kept.get(id)
    const answer = (): EntryAnswer => {
      if (missing) return { kind: 'photo-missing', id, sha256: missing }
      if (known && known.said !== said) return { kind: 'refused', id, refusal: { code: 'id-taken' } }
      if (entry.input.isBad === true) return { kind: 'refused', id, refusal: { code: 'late-reason-missing' } }
      const position = known?.position ?? (lengths.get(stream) ?? 0) + 1
      lengths.set(stream, Math.max(position, lengths.get(stream) ?? 0))
      kept.set(id, { stream, said, position, sends: (known?.sends ?? 0) + 1 })
      return { kind: 'received', id, receipt: { receivedAt: '2026-05-12T09:00:00+01:00', position } }
    }
    const answered = answer()
    if (answered.kind !== 'received') heldBy.set(stream, [...(heldBy.get(stream) ?? []), entry])
    return answered
  }

  const exchange: OutboxExchange = {
    send: (owner, entries) =>
      carry(async () => {
        for (const { id } of entries) {
          if (inFlight.has(id)) wrongs.push(`${id} is sent by two tabs at once`)
          inFlight.add(id)
        }
        await Promise.resolve()
        const heldBy = new Map<string, SentEntry[]>()
        const answers = entries.map((entry) => receive(owner, entry, heldBy))
        for (const { id } of entries) inFlight.delete(id)
        const serverNow = new Date(weather.nowMs).toISOString()
        return { kind: 'answered' as const, answers, serverNow, sentMs: weather.nowMs, gotMs: weather.nowMs }
      }),
    standingOf: (sha256) => carry<PieceReply>(async () => standing(sha256)),
    putPiece: ({ sha256, offset, sizeBytes, bytes }) =>
      carry<PieceReply>(async () => {
        const parts = pieces.get(sha256) ?? []
        const there = Buffer.concat(parts).length
        if (bytes.size > PIECE_BYTES_AT_MOST) wrongs.push('a piece is too large')
        if (offset !== there) return { kind: 'refused', refusal: { code: 'piece-misplaced', offset: there } }
        pieces.set(sha256, [...parts, Buffer.from(await bytes.arrayBuffer())])
        const all = Buffer.concat(pieces.get(sha256) ?? [])
        if (all.length < sizeBytes) return standing(sha256)
        pieces.delete(sha256)
        if (createHash('sha256').update(all).digest('hex') !== sha256)
          return { kind: 'refused', refusal: { code: 'photo-refused', reason: 'digest-differs' } }
        if (all.includes('damaged')) return { kind: 'refused', refusal: { code: 'photo-refused', reason: 'damaged' } }
        whole.add(sha256)
        return standing(sha256)
      }),
  }
  const standing = (sha256: string): PieceReply => ({
    kind: 'stands',
    standing: { offset: Buffer.concat(pieces.get(sha256) ?? []).length, isWhole: whole.has(sha256) },
  })
  return { exchange, kept, whole, wrongs }
}

export type PretendServer = ReturnType<typeof createPretendServer>
