import type { StreamId } from '@/lib/domain/facts/fact'
import { loadBatchRows } from './batch-list-view'
import { loadInstrumentRows } from './instrument-list-view'
import { loadPersonRows } from './person-list-view'
import type { ReadingDesk } from './reading-desk'
import { loadRepairStates } from './repair-list-view'

export type TraceHit = {
  kind: 'batch' | 'instrument' | 'person' | 'repair'
  stream: StreamId
  number: string
  what: string
  isExact: boolean
}

/**
 * Batches, instruments, persons and repairs whose number or name holds what was asked; exact ones first. An empty question finds nothing.
 */
export async function searchTraces(reading: ReadingDesk, asked: string): Promise<TraceHit[]> {
  const wanted = asked.trim().toLowerCase()
  if (wanted === '') return []
  const hits: TraceHit[] = []
  const offer = (kind: TraceHit['kind'], stream: StreamId, number: string, what: string, names: readonly string[]) => {
    if (names.some((name) => name.toLowerCase().includes(wanted)))
      hits.push({ kind, stream, number, what, isExact: names.some((name) => name.toLowerCase() === wanted) })
  }
  for (const row of await loadBatchRows(reading))
    offer('batch', row.stream, row.number, `${row.product}, ${row.role}`, [
      row.number,
      row.stream.slice('batch:'.length),
      row.product,
    ])
  for (const row of await loadInstrumentRows(reading))
    offer('instrument', row.stream, row.number, row.kind, [row.number, row.certificate ?? '', row.kind])
  for (const row of await loadPersonRows(reading))
    offer('person', row.stream, row.name, `${row.title}, ${row.party}`, [
      row.name,
      row.id,
      ...row.qualifications.map((one) => one.number),
    ])
  for (const state of await loadRepairStates(reading))
    offer('repair', state.stream, state.number, `${state.opened.body.line} ${state.opened.body.lineTitle}`, [
      state.number,
      state.opened.body.line,
    ])
  return hits.sort((a, b) => Number(b.isExact) - Number(a.isExact) || a.number.localeCompare(b.number))
}
