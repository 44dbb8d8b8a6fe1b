import { type EntryRefusal, PIECE_BYTES_AT_MOST } from '@/lib/domain/outbox/exchange'
import type { OutboxExchange, Standstill } from './outbox-exchange'

/** A photo that gives no progress in this many replies is left for the next time. */
const STALLS_AT_MOST = 5
/** Once more from the start when the whole arrived with another digest: pieces of two sendings may have met. */
const DIGEST_TRIES = 2

export type PhotoSent = { kind: 'whole' } | { kind: 'refused'; refusal: EntryRefusal } | Standstill

/**
 * Send one photo in pieces from where the server says it stands, until it is whole there. What arrived stays there when the network goes; the next call goes on behind it.
 * Refused when the server refuses the picture itself.
 */
export async function sendPhoto(exchange: OutboxExchange, sha256: string, blob: Blob): Promise<PhotoSent> {
  let reply = await exchange.standingOf(sha256)
  let furthest = -1
  let stalls = 0
  let digestTries = 0
  for (;;) {
    if (reply.kind !== 'stands' && reply.kind !== 'refused') return reply
    if (reply.kind === 'stands' && reply.standing.isWhole) return { kind: 'whole' }
    let offset = 0
    if (reply.kind === 'stands') offset = reply.standing.offset
    else if (reply.refusal.code === 'piece-misplaced') offset = Number(reply.refusal.offset ?? 0)
    else {
      digestTries += 1
      if (reply.refusal.reason !== 'digest-differs' || digestTries >= DIGEST_TRIES) return reply
      furthest = -1
    }
    if (offset > furthest) furthest = offset
    else {
      stalls += 1
      if (stalls > STALLS_AT_MOST) return { kind: 'server-trouble', status: 200, code: 'no-progress' }
    }
    const bytes = blob.slice(offset, offset + PIECE_BYTES_AT_MOST)
    reply = await exchange.putPiece({ sha256, offset, sizeBytes: blob.size, bytes })
  }
}
