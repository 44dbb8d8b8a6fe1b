import { correctionWords } from '@/lib/domain/fold/correction-words'
import type { RecordState } from '@/lib/domain/fold/repair-state'
import { showReading } from '@/lib/domain/reading'
import { isMarkedReadings, readingOf } from '@/lib/domain/records/show-value'
import { showMoment } from '@/lib/domain/time'
import { type Block, cell, plain } from '../blocks'
import type { DossierContext } from '../dossier-context'

/** Each correction of a record: where, the old value struck through but readable, the new value, why, who and when. Empty when there is none. */
export function correctionsTable(one: RecordState, context: DossierContext): Block[] {
  if (one.corrections.length === 0) return []
  const rows = one.corrections.flatMap((fact) =>
    fact.body.changes.map((change) => {
      const { where, from, to } = correctionWords(one.record, change, context)
      return [
        cell(where),
        { spans: [{ text: from, isStruck: true, tone: 'soft' as const }] },
        { spans: [plain(to)] },
        cell(fact.body.reason),
        cell(`${context.personName(fact.observedBy)}, ${showMoment(fact.observedAt)}`),
      ]
    }),
  )
  return [
    { kind: 'heading', isMinor: true, text: 'Corrected: what was keyed and what it should have been' },
    {
      kind: 'table',
      columns: [
        { title: 'Where' },
        { title: 'As first keyed' },
        { title: 'Corrected to' },
        { title: 'Reason' },
        { title: 'Who, when' },
      ],
      rows,
    },
  ]
}

/** Old values of corrected readings in a list, by mark (`mark/before` and `mark/after` for filler heights). */
export function correctedReadings(one: RecordState, field: string): ReadonlyMap<string, string> {
  const was = new Map<string, string>()
  for (const { path, from } of one.corrections.flatMap((fact) => fact.body.changes)) {
    const [name, index] = path
    const list: unknown =
      typeof name === 'string' ? Object.entries(one.record).find(([key]) => key === name)?.[1] : undefined
    const isFiller = one.record.type === 'filler-thickness'
    if (typeof index !== 'number' || !isMarkedReadings(list) || (!isFiller && name !== field)) continue
    const mark = list[index]?.mark
    const old =
      readingOf(from) ?? readingOf(typeof from === 'object' && from !== null && 'reading' in from ? from.reading : null)
    if (mark !== undefined && old) was.set(isFiller ? `${mark}/${name}` : mark, showReading(old))
  }
  return was
}
