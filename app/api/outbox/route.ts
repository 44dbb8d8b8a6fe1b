import { REQUEST_BYTES_AT_MOST } from '@/lib/domain/outbox/exchange'
import { done, type Result, refused } from '@/lib/domain/result'
import { receiveEntries } from '@/lib/server/commands/receive-entries'
import type { Refusal } from '@/lib/server/commands/refusal'
import { loadRuntime } from '@/lib/server/runtime/runtime'
import { answer, isFromHere } from '../answer'
import { readBounded } from '../photos/read-bounded'
import { answerExchange } from './answer-exchange'

/** Receive entries of an outbox, as JSON; every entry gets its own answer, and the answer tells the server's time, by which a device measures its clock. */
export function POST(request: Request): Promise<Response> {
  return answer(async (actor) => {
    if (!isFromHere(request)) return refused<Refusal>({ code: 'not-found' })
    const input = await readJson(request)
    if (!input.ok) return input
    const received = await receiveEntries(actor, input.value)
    const { store } = await loadRuntime()
    return answerExchange(received, { now: store.now() })
  })
}

async function readJson(request: Request): Promise<Result<unknown, Refusal>> {
  const bytes = await readBounded(request.body, REQUEST_BYTES_AT_MOST)
  if (!bytes) return refused({ code: 'invalid', fields: { form: [`at most ${REQUEST_BYTES_AT_MOST} bytes`] } })
  try {
    return done(JSON.parse(new TextDecoder().decode(bytes)) as unknown)
  } catch (error) {
    if (error instanceof SyntaxError) return refused({ code: 'invalid', fields: { form: ['JSON'] } })
    throw error
  }
}
