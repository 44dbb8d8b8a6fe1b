import { describe, expect, test } from 'vitest'
import type { FactOf } from '@/lib/domain/facts/fact-kinds'
import type { RecordState } from '@/lib/domain/fold/repair-state'
import type { DossierContext } from '@/lib/dossier/dossier-context'
import { paperSpans } from '@/lib/dossier/records/paper-spans'
import { photoBlocks } from '@/lib/dossier/sections/photo-blocks'
import { toldUnasked } from '@/lib/dossier/sections/told-unasked'
import { climateFromPaper, SCAN } from '@/test/domain/fold/climate-from-paper'
import { smallJob } from '@/test/domain/fold/small-job'
import { REPAIR } from '@/test/domain/fold/small-job-plan'
import { attemptOf, fold } from '@/test/domain/fold/small-job-state'

/** Point 07 copied from paper, with its scan and one photo of the work. */
function copied() {
  const job = smallJob()
  const photo = job.attach('07', '05-12 12:00', 'a', { caption: 'seen' })
  const { scan, record } = climateFromPaper(job)
  return { job, record, pictures: [photo, scan] }
}

function contextOf(pictures: readonly FactOf<'photo-attached'>[]): DossierContext {
  return {
    photos: pictures.map((fact, at) => ({
      no: at + 1,
      isReadable: true,
      photo: { fact, judged: null, flags: [] },
      attempt: { point: fact.body.point, attempt: 1 },
    })),
    personName: (person: string) => person,
  } as unknown as DossierContext
}

const textOf = (one: RecordState | undefined, context: DossierContext) =>
  one
    ? paperSpans(one, context)
        .map((span) => span.text)
        .join('')
    : ''

describe('the dossier of a record copied from paper', () => {
  test('says sheet, keeper, place, scan with its number, and who checked it', () => {
    const { job, record, pictures } = copied()
    const context = contextOf(pictures)
    const before = textOf(attemptOf(fold(job.facts, '05-12 12:20'), '07').records[0], context)
    expect(before).toBe(
      ` Transcribed from paper, kept by crew office, file 3; scan SHA-256 ${SCAN.slice(0, 16)}…; not checked by a second person; the scan is 2 in section 19.`,
    )
    job.make(
      REPAIR,
      'transcription-checked',
      '05-12 12:30',
      { point: '07', attempt: 1, record: record.id, corrections: [], result: 'agrees' },
      { by: 'tobias' },
    )
    const after = textOf(attemptOf(fold(job.facts, '05-12 12:40'), '07').records[0], context)
    expect(after).toContain('checked against the paper by tobias, 2026-05-12 12:30 +01:00: agrees')
  })

  test('lists under copies what tells of the copy, and a step taken too early or a correction not applied where it belongs', () => {
    const { job, record, pictures } = copied()
    const target = record.id
    const change = { path: ['airTemp', 'text'], from: 'never keyed', to: '30' }
    job.make(REPAIR, 'corrected', '05-12 12:35', { target, changes: [change], reason: 'misread' }, { by: 'maren' })
    const context = {
      ...contextOf(pictures),
      facts: job.facts,
      receipts: new Map(),
      persons: new Map(),
      state: fold(job.facts, '05-12 12:40'),
    } as unknown as DossierContext
    const words = JSON.stringify(toldUnasked(context))
    const from = words.indexOf('Transcriptions from paper, and their checks: 1')
    const rest = words.indexOf('Refusals, falls, waivers, events and conflicts: ')
    expect(from).toBeGreaterThan(0)
    expect(words.slice(from, rest)).toContain('transcribed from paper, kept by crew office')
    expect(words.slice(from, rest)).not.toContain('begun without a release')
    expect(words.slice(rest)).toContain('Point 07 begun without a release of point')
    expect(words.slice(rest)).toContain('was not applied')
  })

  test('prints the scan apart from the photos, as a scan, with its whole digest', () => {
    const blocks = photoBlocks(contextOf(copied().pictures))
    const shown = blocks.flatMap((block) => (block.kind === 'photos' ? [block] : []))
    expect(shown.map((block) => block.photos.length)).toEqual([1, 1])
    expect(blocks).toContainEqual({ kind: 'heading', text: 'Scans of paper tallies: 1' })
    const words = shown.map((block) =>
      block.photos.flatMap((one) => one.lines.flat().map((span) => span.text)).join(' '),
    )
    expect(words[0]).not.toContain('SCAN OF PAPER')
    expect(words[1]).toContain('SCAN OF PAPER, NO PHOTO: Tally sheet')
    expect(words[1]).toContain(`original ${SCAN}`)
  })
})
