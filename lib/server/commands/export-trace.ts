import * as z from 'zod'
import type { StreamId } from '@/lib/domain/facts/fact'
import { done, refused } from '@/lib/domain/result'
import { Moment } from '@/lib/domain/time'
import { traceBatchView } from '@/lib/server/views/trace-batch-view'
import { traceInstrumentView } from '@/lib/server/views/trace-instrument-view'
import { tracePersonView } from '@/lib/server/views/trace-person-view'
import { traceRepairView } from '@/lib/server/views/trace-repair-view'
import type { TraceUseLine } from '@/lib/server/views/trace-use-line'
import { authorise } from './authorise'
import { command } from './command'
import { csvLine } from './csv-line'
import type { Desk } from './desk'

const ExportTrace = z.strictObject({
  kind: z.enum(['batch', 'instrument', 'person', 'repair']),
  name: z.string().min(1).max(110),
  from: Moment.optional(),
  to: Moment.optional(),
})
type Form = z.infer<typeof ExportTrace>

/** A use with the papers behind it, as one line of an export. */
type ExportLine = TraceUseLine & { of: string; papers: string }

const HEADINGS = [
  'observed at',
  'repair',
  'line',
  'repair status',
  'point',
  'title',
  'attempt',
  'batch, instrument or person',
  'as',
  'into',
  'amount',
  'verdict',
  'state',
  'in question',
  'overruled',
  'papers valid then',
  'fact',
]

/**
 * Every use of a batch, an instrument or a person, or everything behind a repair, as CSV: `{ kind, name, from?, to? }`; the times bound instruments and persons.
 * Uses in repairs of projects whose record the actor may not read are left out; a last line says how many.
 * Refuses `invalid`, `not-found`, `not-allowed`.
 */
export const exportTrace = command(ExportTrace, async (desk, form) => {
  const lines = await linesOf(desk, form)
  const barred = authorise(desk.actor, lines?.project ?? 'any', desk.today(null), 'read record')
  if (barred) return refused(barred)
  if (!lines) return refused({ code: 'not-found' })
  const readable = await readableRepairs(desk, lines.uses)
  const shown = lines.uses.filter((use) => readable.has(use.repair))
  const hiddenCount = lines.uses.length - shown.length
  const text =
    csvLine(HEADINGS) +
    shown
      .map((use) =>
        csvLine([
          use.at,
          use.number,
          use.line,
          use.status,
          use.point,
          use.pointTitle,
          use.attempt,
          use.of,
          use.role,
          use.into,
          use.amount,
          use.verdict,
          use.state,
          use.isInQuestion ? 'yes' : 'no',
          use.isOverruled ? 'yes' : 'no',
          use.papers,
          use.fact,
        ]),
      )
      .join('') +
    (hiddenCount > 0 ? csvLine([`left out: ${hiddenCount} in projects that the reader may not read`]) : '')
  return done({ text, fileName: `trace-${form.kind}-${form.name.replaceAll(/[^A-Za-z0-9._-]/g, '-')}.csv` })
})

/** Repairs among some uses that lie in projects whose record the actor may read. */
async function readableRepairs({ actor, stateOf, today }: Desk, uses: readonly TraceUseLine[]): Promise<Set<StreamId>> {
  const readable = new Set<StreamId>()
  for (const repair of new Set(uses.map((use) => use.repair))) {
    const state = await stateOf(repair)
    if (state && !authorise(actor, state.opened.body.project, today(null), 'read record')) readable.add(repair)
  }
  return readable
}

async function linesOf(
  { store, actor }: Desk,
  { kind, name, from, to }: Form,
): Promise<{ project: StreamId | 'any'; uses: ExportLine[] } | null> {
  const period = { from: from ?? null, to: to ?? null }
  switch (kind) {
    case 'batch': {
      const view = await traceBatchView(store, actor.tenant, name)
      return (
        view && { project: 'any', uses: view.uses.map((use) => ({ ...use, of: name, papers: view.certificate ?? '' })) }
      )
    }
    case 'instrument': {
      const view = await traceInstrumentView(store, actor.tenant, name, period)
      return (
        view && {
          project: 'any',
          uses: view.uses.map((use) => ({
            ...use,
            of: name,
            papers: use.certificate ? `${use.certificate} to ${use.certificateTo}` : '',
          })),
        }
      )
    }
    case 'person': {
      const view = await tracePersonView(store, actor.tenant, name, period)
      return (
        view && {
          project: 'any',
          uses: view.uses.map((use) => ({ ...use, of: view.name, papers: use.qualifications.join('; ') })),
        }
      )
    }
    case 'repair': {
      const view = await traceRepairView(store, actor.tenant, name)
      return (
        view && {
          project: view.project,
          uses: view.sources.flatMap((source) =>
            source.uses.map((use) => ({ ...use, of: source.name, papers: source.papers.join('; ') })),
          ),
        }
      )
    }
  }
}
