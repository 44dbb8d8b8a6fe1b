import { PIECE_BYTES_AT_MOST } from '@/lib/domain/outbox/exchange'
import { done, refused } from '@/lib/domain/result'
import { pieceStanding, receivePiece } from '@/lib/server/commands/receive-piece'
import type { Refusal } from '@/lib/server/commands/refusal'
import { answer, isFromHere } from '../../../answer'
import { readBounded } from '../../../photos/read-bounded'
import { answerExchange } from '../../answer-exchange'

type Params = { params: Promise<{ sha256: string }> }

/** How much of a photo of the caller's own sending is here: `{ offset, isWhole }`. */
export async function GET(_request: Request, { params }: Params): Promise<Response> {
  const { sha256 } = await params
  return answer((actor) => pieceStanding(actor, { sha256 }))
}

/** Take in one piece: the body, from `x-underwrap-offset` on, of a photo of `x-underwrap-size` bytes. */
export async function PATCH(request: Request, { params }: Params): Promise<Response> {
  const { sha256 } = await params
  return answer(async (actor) => {
    if (!isFromHere(request)) return refused<Refusal>({ code: 'not-found' })
    const piece = {
      sha256,
      offset: wholeNumber(request.headers.get('x-underwrap-offset')),
      sizeBytes: wholeNumber(request.headers.get('x-underwrap-size')),
    }
    return answerExchange(
      await receivePiece(actor, piece, async () => {
        const bytes = await readBounded(request.body, PIECE_BYTES_AT_MOST)
        return bytes
          ? done(bytes)
          : refused({ code: 'invalid', fields: { body: [`at most ${PIECE_BYTES_AT_MOST} bytes`] } })
      }),
    )
  })
}

function wholeNumber(text: string | null): number | null {
  return text !== null && /^\d{1,12}$/.test(text) ? Number(text) : null
}
