import { openSitePack } from '@/lib/server/commands/open-site-pack'
import { answer } from '../../answer'
import { plainParam } from '../../plain-param'

type Params = { params: Promise<{ number: string }> }

/** A repair's facts for a device that goes where there is no network, as JSON. */
export async function GET(_request: Request, { params }: Params): Promise<Response> {
  const { number } = await params
  return answer(async (actor) => {
    const opened = await openSitePack(actor, { repair: `repair:${plainParam(number)}` })
    if (!opened.ok) return opened
    return new Response(opened.value.bytes, {
      headers: { 'content-type': 'application/json; charset=utf-8', 'cache-control': 'private, no-store' },
    })
  })
}
