import { type Result, refused } from '@/lib/domain/result'
import { allotNumbers } from '@/lib/server/commands/allot-numbers'
import { listNumberGrounds } from '@/lib/server/commands/list-number-grounds'
import type { Refusal } from '@/lib/server/commands/refusal'
import { answer, isFromHere } from '../answer'
import { readBounded } from '../photos/read-bounded'

const BYTES_AT_MOST = 4000

/** Projects for which a device may take repair numbers along, with what it has left, as JSON. */
export function GET(request: Request): Promise<Response> {
  return answer((actor) => listNumberGrounds(actor, { device: new URL(request.url).searchParams.get('device') ?? '' }))
}

/** Allot the next free block of repair numbers to a device. */
export function POST(request: Request): Promise<Response> {
  return answer(async (actor): Promise<Result<unknown, Refusal>> => {
    if (!isFromHere(request)) return refused({ code: 'not-found' })
    const bytes = await readBounded(request.body, BYTES_AT_MOST)
    try {
      return await allotNumbers(actor, bytes ? JSON.parse(new TextDecoder().decode(bytes)) : null)
    } catch (error) {
      if (error instanceof SyntaxError) return refused({ code: 'invalid', fields: { form: ['JSON'] } })
      throw error
    }
  })
}
