import { type FactId, type PersonId, StreamId } from '@/lib/domain/facts/fact'
import type { Fact } from '@/lib/domain/facts/fact-kinds'
import type { RepairState } from '@/lib/domain/fold/repair-state'
import type { Moment } from '@/lib/domain/time'
import { loadStreams } from '@/lib/server/store/load-stream'
import type { ReadingDesk } from './reading-desk'
import { loadRepairView } from './repair-view'

export type TrailLine = {
  id: FactId
  receivedAt: Moment | null
  observedAt: Moment
  late: string | null
  what: string
  where: string
  observedBy: string
  enteredBy: string
  device: string
  sha256: string | null
}
export type TrailView = { lines: TrailLine[]; remarkable: RepairState['remarkable'] }

/** Every fact of a repair, its nonconformances and its dossier, in order of receipt. Null when it is not there to read. */
export async function loadTrailView(reading: ReadingDesk, number: string): Promise<TrailView | null> {
  const view = await loadRepairView(reading, number)
  if (!view) return null
  const { state, names } = view
  const streams = [state.stream, ...state.nonconformances.map((one) => one.stream), StreamId.parse(`dossier:${number}`)]
  const { facts, receipts, sha256Of } = await loadStreams(reading.desk.store, reading.actor.tenant, streams)
  const receiptOf = (id: FactId) => (receipts instanceof Map ? receipts.get(id) : receipts[id])
  const name = (id: PersonId) => names[id] ?? id
  const lines = facts.map(
    (fact): TrailLine => ({
      id: fact.id,
      receivedAt: receiptOf(fact.id)?.receivedAt ?? null,
      observedAt: fact.observedAt,
      late: fact.late?.reason ?? null,
      what: whatOf(fact),
      where: whereOf(fact),
      observedBy: name(fact.observedBy),
      enteredBy: name(fact.enteredBy),
      device: fact.device.id,
      sha256: sha256Of.get(fact.id) ?? null,
    }),
  )
  return {
    lines: lines.sort((a, b) => Date.parse(a.receivedAt ?? a.observedAt) - Date.parse(b.receivedAt ?? b.observedAt)),
    remarkable: state.remarkable,
  }
}

function whatOf(fact: Fact): string {
  const words = fact.kind.replaceAll('-', ' ')
  if (fact.kind === 'recorded') return `recorded: ${fact.body.record.type.replaceAll('-', ' ')}`
  if (fact.kind === 'signed') return `signed: ${fact.body.meaning}, ${fact.body.name}`
  if (fact.kind === 'photo-attached') return `photo: ${fact.body.caption}`
  if (fact.kind === 'corrected') return `corrected: ${fact.body.reason}`
  return words
}

function whereOf(fact: Fact): string {
  const at =
    'point' in fact.body && fact.body.point
      ? `point ${fact.body.point}${'attempt' in fact.body && fact.body.attempt ? ` attempt ${fact.body.attempt}` : ''}`
      : ''
  return [fact.stream.replace(':', ' '), at].filter((part) => part !== '').join(', ')
}
