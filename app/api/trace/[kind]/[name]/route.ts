import { exportTrace } from '@/lib/server/commands/export-trace'
import { answer } from '../../../answer'
import { plainParam } from '../../../plain-param'

type Params = { params: Promise<{ kind: string; name: string }> }

/** A trace as CSV: `/api/trace/batch/FP-118.csv`, with `from` and `to` for instruments and persons. */
export async function GET(request: Request, { params }: Params): Promise<Response> {
  const { kind, name } = await params
  const period = Object.fromEntries(
    ['from', 'to'].flatMap((key) => {
      const value = new URL(request.url).searchParams.get(key)
      return value ? [[key, value]] : []
    }),
  )
  return answer(async (actor) => {
    const trace = await exportTrace(actor, { kind, name: plainParam(name).replace(/\.csv$/, ''), ...period })
    if (!trace.ok) return trace
    return new Response(trace.value.text, {
      headers: {
        'content-type': 'text/csv; charset=utf-8',
        'content-disposition': `attachment; filename="${trace.value.fileName}"`,
        'x-content-type-options': 'nosniff',
        'cache-control': 'private, no-store',
      },
    })
  })
}
