import { describe, expect, test } from 'vitest'
import type { FactOf } from '@/lib/domain/facts/fact-kinds'
import type { RecordState } from '@/lib/domain/fold/repair-state'
import type { DossierContext } from '@/lib/dossier/dossier-context'
import { paperSpans } from '@/lib/dossier/records/paper-spans'
import { photoBlocks } from '@/lib/dossier/sections/photo-blocks'
import { photoBody } from '@/test/domain/fold/photo-body'
import { smallJob } from '@/test/domain/fold/small-job'
import { REPAIR } from '@/test/domain/fold/small-job-plan'
import { climate } from '@/test/domain/fold/small-job-records'
import { attemptOf, fold } from '@/test/domain/fold/small-job-state'

/** Point 07 copied from paper, with its scan and one photo of the work. */
function copied() {
  const job = smallJob()
  const attach = (hash: string, more: object) =>
    job.make(REPAIR, 'photo-attached', '05-12 12:00', {
      point: '07',
      attempt: 1,
      caption: 'seen',
      photo: photoBody(hash),
      ...more,
    })
  const pictures = [attach('a', {}), attach('e', { scan: { sheet: 'MD-0099/07/1/260512-080000' } })]
  const record = job.make(
    REPAIR,
    'recorded',
    '05-12 09:22',
    {
      point: '07',
      attempt: 1,
      record: climate('05-12 09:22'),
      transcribed: { tally: 'e'.repeat(64), keeper: 'crew office', place: 'file 3' },
    },
    { by: 'edda', enteredBy: 'maren', enteredAt: '05-12 12:05' },
  )
  return { job, record, pictures }
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
      ` Transcribed from paper, kept by crew office, file 3; scan SHA-256 ${'e'.repeat(16)}…; not checked by a second person; the scan is 2 in section 19.`,
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

  test('prints the scan apart from the photos, as a scan, with its whole digest', () => {
    const blocks = photoBlocks(contextOf(copied().pictures))
    const shown = blocks.flatMap((block) => (block.kind === 'photos' ? [block] : []))
    expect(shown.map((block) => block.photos.length)).toEqual([1, 1])
    expect(blocks).toContainEqual({ kind: 'heading', text: 'Scans of paper tallies: 1' })
    const words = shown.map((block) =>
      block.photos.flatMap((one) => one.lines.flat().map((span) => span.text)).join(' '),
    )
    expect(words[0]).not.toContain('SCAN OF PAPER')
    expect(words[1]).toContain('SCAN OF PAPER, NO PHOTO: seen')
    expect(words[1]).toContain(`original ${'e'.repeat(64)}`)
  })
})
