import { proveConsistency } from '@/lib/server/commands/prove-consistency'
import { answer } from '../../answer'

/** The log's head now and the proof that it continues an earlier size: `?from=<size>`. The reader's browser computes whether it holds. */
export async function GET(request: Request): Promise<Response> {
  const from = new URL(request.url).searchParams.get('from') ?? undefined
  return answer((actor) => proveConsistency(actor, { from }))
}
