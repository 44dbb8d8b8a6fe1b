import type { StreamId } from '@/lib/domain/facts/fact'
import type { FactKind } from '@/lib/domain/facts/fact-kinds'
import { RECORD_TYPES, type RecordType } from '@/lib/domain/records/record'
import { done, type Result, refused } from '@/lib/domain/result'
import { CalendarDay } from '@/lib/domain/time'
import type { Desk } from '@/lib/server/commands/desk'
import type { Refusal } from '@/lib/server/commands/refusal'
import { listStreams } from '@/lib/server/store/list-streams'
import { countTrail, searchTrail, type TrailQuery } from '@/lib/server/store/search-trail'
import { type TrailLineOfAudit, trailLineOf } from './audit-line'
import { AUDIT_BARRED, type TrailReach, trailReachOf } from './audit-reach'
import { streamNamed } from './audit-stream'
import { kindsByStream } from './audit-words'
import { loadNames, type ReadingDesk } from './reading-desk'

/** A search as its form and its address write it: every part may be missing or empty. */
export type SearchParams = {
  person?: string | undefined
  batch?: string | undefined
  instrument?: string | undefined
  repair?: string | undefined
  act?: string | undefined
  from?: string | undefined
  to?: string | undefined
  basis?: string | undefined
}
export type SearchFault = { field: keyof SearchParams; text: string }
export type SearchOptions = {
  persons: { id: string; name: string }[]
  instruments: string[]
  batches: string[]
  repairs: string[]
}
export type AuditSearch = {
  count: number
  page: number
  pageCount: number
  lines: TrailLineOfAudit[]
  faults: SearchFault[]
  options: SearchOptions
  reach: TrailReach
}

export const LINES_A_PAGE = 50
const KINDS: ReadonlySet<string> = new Set(kindsByStream().flatMap((one) => one.kinds))
const ABOUT = ['person', 'batch', 'instrument', 'repair'] as const

/** What a search asks for, with every part that says nothing that could be found. Days are whole days at the UTC offset. */
export function parseSearch(
  params: SearchParams,
  utcOffset: string,
  hidden: readonly StreamId[],
): { query: TrailQuery; faults: SearchFault[] } {
  const faults: SearchFault[] = []
  const filled = (field: keyof SearchParams) => params[field]?.trim() || null
  const about = ABOUT.flatMap((field): StreamId[] => {
    const name = filled(field)
    const stream = name ? streamNamed(field, name) : null
    if (name && !stream) faults.push({ field, text: `“${name}” can be the name of no ${field}.` })
    return stream ? [stream] : []
  })
  const day = (field: 'from' | 'to', clock: string) => {
    const text = filled(field)
    const parsed = text ? CalendarDay.safeParse(text) : null
    if (parsed && !parsed.success) faults.push({ field, text: `“${text}” is no day.` })
    return parsed?.success ? `${parsed.data}T${clock}${utcOffset}` : null
  }
  const act = filled('act')
  const recordType = act?.startsWith('recorded/') ? act.slice('recorded/'.length) : null
  const isRecordType = RECORD_TYPES.includes(recordType as RecordType)
  if (act && !KINDS.has(act) && !isRecordType) faults.push({ field: 'act', text: `There is no act “${act}”.` })
  return {
    query: {
      about,
      kind: isRecordType ? 'recorded' : act && KINDS.has(act) ? (act as FactKind) : null,
      recordType: isRecordType ? (recordType as RecordType) : null,
      from: day('from', '00:00:00'),
      to: day('to', '23:59:59.999'),
      basis: filled('basis') === 'received' ? 'received' : 'observed',
      hidden,
    },
    faults,
  }
}

/** One page of a search of the trail, in order of receipt. A search with a fault finds nothing. Refuses `not-allowed`. */
export async function loadAuditSearch(
  { desk, actor }: ReadingDesk,
  params: SearchParams,
  page: number,
  utcOffset: string,
): Promise<Result<AuditSearch, Refusal>> {
  const reach = await trailReachOf(desk)
  if (!reach) return refused(AUDIT_BARRED)
  const { query, faults } = parseSearch(params, utcOffset, reach.hidden)
  const count = faults.length > 0 ? 0 : await countTrail(desk.store, actor.tenant, query)
  const pageCount = Math.max(1, Math.ceil(count / LINES_A_PAGE))
  const shown = Math.min(Math.max(1, page), pageCount)
  const rows =
    count === 0
      ? []
      : await searchTrail(desk.store, actor.tenant, query, { skip: (shown - 1) * LINES_A_PAGE, limit: LINES_A_PAGE })
  const names = await loadNames(desk)
  return done({
    count,
    page: shown,
    pageCount,
    lines: rows.map((row) => trailLineOf(row, names)),
    faults,
    options: await optionsOf(desk, names, reach),
    reach,
  })
}

async function optionsOf(
  desk: Desk,
  names: Readonly<Record<string, string>>,
  { hidden }: TrailReach,
): Promise<SearchOptions> {
  const shut = new Set<string>(hidden)
  const named = async (kind: 'instrument' | 'batch' | 'repair') =>
    (await listStreams(desk.store, desk.actor.tenant, kind))
      .filter((one) => !shut.has(one.stream))
      .map((one) => one.stream.slice(kind.length + 1))
  return {
    persons: Object.entries(names)
      .map(([id, name]) => ({ id, name }))
      .sort((a, b) => a.name.localeCompare(b.name)),
    instruments: await named('instrument'),
    batches: await named('batch'),
    repairs: await named('repair'),
  }
}
