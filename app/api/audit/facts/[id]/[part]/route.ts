import { openTrailFact } from '@/lib/server/commands/open-trail-fact'
import { answer } from '../../../../answer'
import { plainParam } from '../../../../plain-param'
import { sendText } from '../../../send-text'

type Params = { params: Promise<{ id: string; part: string }> }

/** One part of a fact's evidence as a file: `fact.json`, `leaf.json`, `inclusion.json` or `checkpoint.txt`. */
export async function GET(_request: Request, { params }: Params): Promise<Response> {
  const { id, part } = await params
  return answer(async (actor) =>
    sendText(await openTrailFact(actor, { id: plainParam(id), part: plainParam(part) }), 'text/plain; charset=utf-8'),
  )
}
