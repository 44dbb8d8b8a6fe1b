import { exportTrailSearch } from '@/lib/server/commands/export-trail-search'
import { answer } from '../../answer'
import { sendText } from '../send-text'

const FIELDS = ['person', 'batch', 'instrument', 'repair', 'act', 'from', 'to', 'basis'] as const

/** All that a search of the trail finds, as CSV, by the same fields as the page of the search. */
export async function GET(request: Request): Promise<Response> {
  const asked = new URL(request.url).searchParams
  const form = Object.fromEntries(
    FIELDS.flatMap((name) => (asked.get(name) ? [[name, asked.get(name) ?? undefined]] : [])),
  )
  return answer(async (actor) => sendText(await exportTrailSearch(actor, form), 'text/csv; charset=utf-8'))
}
