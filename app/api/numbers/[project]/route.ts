import { openProjectPack } from '@/lib/server/commands/open-project-pack'
import { answer } from '../../answer'
import { plainParam } from '../../plain-param'

type Params = { params: Promise<{ project: string }> }

/** A project for a device that opens repairs where there is no network, as JSON. */
export async function GET(request: Request, { params }: Params): Promise<Response> {
  const { project } = await params
  const device = new URL(request.url).searchParams.get('device') ?? ''
  return answer(async (actor) => {
    const opened = await openProjectPack(actor, { project: `project:${plainParam(project)}`, device })
    if (!opened.ok) return opened
    return new Response(opened.value.bytes, {
      headers: { 'content-type': 'application/json; charset=utf-8', 'cache-control': 'private, no-store' },
    })
  })
}
