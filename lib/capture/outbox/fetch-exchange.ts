import * as z from 'zod'
import {
  EntryRefusal,
  OUTBOX_VERSION,
  OutboxReply,
  type OutboxRequest,
  PieceStanding,
} from '@/lib/domain/outbox/exchange'
import type { OutboxExchange, PieceReply, Standstill } from './outbox-exchange'

const WAIT_MS = 30_000
const PIECE_WAIT_MS = 90_000
const TRANSPORT_STATUS = new Set([401, 408, 425, 426, 429])

const Refused = z.object({ ok: z.literal(false), error: EntryRefusal })
const Stands = z.object({ ok: z.literal(true), value: PieceStanding })

type Reply = { status: number; json: unknown }

/**
 * The exchange over HTTP.
 * @param base where the server is, empty for the page's own
 * @param nowMs the clock by which facts are captured
 */
export function createFetchExchange(
  send: typeof fetch = (input, init) => fetch(input, init),
  base = '',
  nowMs: () => number = () => Date.now(),
): OutboxExchange {
  const ask = async (path: string, init: RequestInit, waitMs: number): Promise<Reply | null> => {
    try {
      const reply = await send(base + path, { ...init, cache: 'no-store', signal: AbortSignal.timeout(waitMs) })
      return { status: reply.status, json: await reply.json() }
    } catch (cause) {
      // a cut answer is no JSON; a lost one is a TypeError; one waited for too long a DOMException
      if (cause instanceof TypeError || cause instanceof SyntaxError || cause instanceof DOMException) return null
      throw cause
    }
  }
  const askPiece = async (sha256: string, init: RequestInit): Promise<PieceReply> => {
    const reply = await ask(`/api/outbox/photos/${sha256}`, init, PIECE_WAIT_MS)
    if (!reply) return { kind: 'no-network' }
    const stands = Stands.safeParse(reply.json)
    if (stands.success) return { kind: 'stands', standing: stands.data.value }
    const refusal = Refused.safeParse(reply.json)
    return refusal.success && reply.status < 500 && !TRANSPORT_STATUS.has(reply.status)
      ? { kind: 'refused', refusal: refusal.data.error }
      : standstillOf(reply)
  }
  return {
    async send({ tenant, person }, entries) {
      const request: OutboxRequest = { v: OUTBOX_VERSION, tenant, person, entries: [...entries] }
      const sentMs = nowMs()
      const body = JSON.stringify(request)
      const headers = { 'content-type': 'application/json' }
      const reply = await ask('/api/outbox', { method: 'POST', body, headers }, WAIT_MS)
      if (!reply) return { kind: 'no-network' }
      const answered = OutboxReply.safeParse(reply.json)
      if (!answered.success) return standstillOf(reply)
      return { kind: 'answered', answers: answered.data.value, serverNow: answered.data.now, sentMs, gotMs: nowMs() }
    },
    standingOf: (sha256) => askPiece(sha256, { method: 'GET' }),
    putPiece: ({ sha256, offset, sizeBytes, bytes }) =>
      askPiece(sha256, {
        method: 'PATCH',
        body: bytes,
        headers: {
          'content-type': 'application/octet-stream',
          'x-underwrap-offset': String(offset),
          'x-underwrap-size': String(sizeBytes),
        },
      }),
  }
}

function standstillOf({ status, json }: Reply): Standstill {
  const refusal = Refused.safeParse(json)
  const code = refusal.success ? refusal.data.error.code : null
  switch (code) {
    case 'not-signed-in':
      return { kind: 'signed-out' }
    case 'not-own-entry':
    case 'not-found':
      return { kind: 'other-person' }
    case 'version-too-old':
    case 'version-too-new':
      return { kind: code }
    default:
      return { kind: 'server-trouble', status, code }
  }
}
