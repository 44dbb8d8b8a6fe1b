import { loadJob } from '@/lib/server/commands/load-job'
import { answer } from '../../answer'
import { plainParam } from '../../plain-param'

/** How far a job is, by the key that queueing it answered. */
export async function GET(_request: Request, { params }: { params: Promise<{ key: string }> }): Promise<Response> {
  const { key } = await params
  return answer((actor) => loadJob(actor, { key: plainParam(key) }))
}
