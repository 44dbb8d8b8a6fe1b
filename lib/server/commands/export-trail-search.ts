import * as z from 'zod'
import { done, refused } from '@/lib/domain/result'
import { searchTrail } from '@/lib/server/store/search-trail'
import { type TrailLineOfAudit, trailLineOf } from '@/lib/server/views/audit-line'
import { AUDIT_BARRED, trailReachOf } from '@/lib/server/views/audit-reach'
import { parseSearch } from '@/lib/server/views/audit-search-view'
import { loadNames } from '@/lib/server/views/reading-desk'
import { command, invalid } from './command'
import { csvLine } from './csv-line'

const ROWS_AT_ONCE = 1000
const Field = z.string().max(200).optional()
const ExportSearch = z.strictObject({
  person: Field,
  batch: Field,
  instrument: Field,
  repair: Field,
  act: Field,
  from: Field,
  to: Field,
  basis: Field,
})
const HEADINGS = [
  'leaf',
  'received at',
  'received from',
  'observed at',
  'observed by',
  'entered at',
  'entered by',
  'device',
  'clock error, ms',
  'late because',
  'stream',
  'position',
  'kind',
  'what',
  'where',
  'SHA-256',
  'bytes',
  'fact',
]

/** What a search of the trail finds, all pages of it, as CSV in order of receipt. Takes the fields of the search; days are whole days at the store's own offset. Refuses `invalid`, `not-allowed`. */
export const exportTrailSearch = command(ExportSearch, async (desk, form) => {
  const reach = await trailReachOf(desk)
  if (!reach) return refused(AUDIT_BARRED)
  const now = desk.now(null)
  const { query, faults } = parseSearch(form, now.endsWith('Z') ? '+00:00' : now.slice(-6), reach.hidden)
  if (faults.length > 0)
    return refused(
      invalid(
        new z.ZodError(
          faults.map((one) => ({ code: 'custom', path: [one.field], message: one.text, input: undefined })),
        ),
      ),
    )
  const names = await loadNames(desk)
  let text = csvLine(HEADINGS)
  for (let skip = 0; ; skip += ROWS_AT_ONCE) {
    const rows = await searchTrail(desk.store, desk.actor.tenant, query, { skip, limit: ROWS_AT_ONCE })
    text += rows.map((row) => lineOf(trailLineOf(row, names))).join('')
    if (rows.length < ROWS_AT_ONCE) return done({ text, fileName: 'trail-search.csv' })
  }
})

function lineOf(line: TrailLineOfAudit): string {
  return csvLine([
    line.leaf,
    line.receivedAt,
    line.receivedBy,
    line.observedAt,
    line.observedBy,
    line.enteredAt,
    line.enteredBy,
    line.device,
    line.clockOffsetMs,
    line.late,
    line.stream,
    line.position,
    line.kind,
    line.what,
    line.where,
    line.sha256,
    line.isBroken ? 'do not give the digest' : 'give the digest',
    line.id,
  ])
}
