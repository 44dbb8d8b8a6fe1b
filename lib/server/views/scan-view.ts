import { foldBatch } from '@/lib/domain/fold/fold-batch'
import { foldInstrument } from '@/lib/domain/fold/fold-instrument'
import type { RepairState } from '@/lib/domain/fold/repair-state'
import type { BatchState, InstrumentState } from '@/lib/domain/fold/store-states'
import { findLabelled, type LabelDoubt, type Labelled } from '@/lib/domain/labels/find-labelled'
import { knownBatch, knownInstrument, knownRepair } from '@/lib/domain/labels/known-things'
import { type LabelMeaning, type LabelRefusal, readLabel } from '@/lib/domain/labels/read-label'
import { listStreams } from '@/lib/server/store/list-streams'
import { loadStreams } from '@/lib/server/store/load-stream'
import { batchStanding } from './batch-words'
import { instrumentStanding } from './instrument-words'
import type { ReadingDesk } from './reading-desk'
import { loadRepairStates } from './repair-list-view'

/** One thing that a label names, with what a person needs to know it by. */
export type ScanHit = Labelled & {
  kind: 'batch' | 'instrument' | 'repair'
  number: string
  what: string
  standing: ReturnType<typeof batchStanding> | ReturnType<typeof instrumentStanding> | null
  status: RepairState['status'] | null
}

export type ScanView =
  | { kind: 'unread'; refusal: LabelRefusal }
  | { kind: 'read'; meaning: LabelMeaning; hits: ScanHit[]; doubts: (LabelDoubt & { number: string })[] }

/** What a label says and which batch, instrument or repair of the reader's record it names; no hit when it is not known there. */
export async function loadScanView(reading: ReadingDesk, text: string): Promise<ScanView> {
  const { desk } = reading
  const today = desk.today(null)
  const read = readLabel(text, Number(today.slice(0, 4)))
  if (!read.ok) return { kind: 'unread', refusal: read.error }
  const [batches, instruments, repairs] = [
    await loadBatches(reading),
    await loadInstruments(reading),
    await loadRepairStates(reading),
  ]
  const { found, doubts } = findLabelled(read.value, {
    batches: batches.map(knownBatch),
    instruments: instruments.map(knownInstrument),
    repairs: repairs.map(knownRepair),
  })
  const hits = found.flatMap((hit): ScanHit[] => {
    const batch = batches.find((one) => one.stream === hit.stream)
    if (batch) return [{ ...hit, ...ofBatch(batch), standing: batchStanding(batch, today) }]
    const instrument = instruments.find((one) => one.stream === hit.stream)
    if (instrument) return [{ ...hit, ...ofInstrument(instrument), standing: instrumentStanding(instrument, today) }]
    const repair = repairs.find((one) => one.stream === hit.stream)
    return repair ? [{ ...hit, ...ofRepair(repair) }] : []
  })
  return {
    kind: 'read',
    meaning: read.value,
    hits,
    doubts: doubts.map((doubt) => ({
      ...doubt,
      number: batches.find((one) => one.stream === doubt.stream)?.number ?? doubt.stream,
    })),
  }
}

const ofBatch = (batch: BatchState) => ({
  kind: 'batch' as const,
  number: batch.number,
  what: `${batch.received.product}, ${batch.received.role}`,
  status: null,
})
const ofInstrument = (instrument: InstrumentState) => ({
  kind: 'instrument' as const,
  number: instrument.number,
  what: instrument.kind,
  status: null,
})
const ofRepair = (repair: RepairState) => ({
  kind: 'repair' as const,
  number: repair.number,
  what: `${repair.opened.body.line} ${repair.opened.body.lineTitle}`,
  standing: null,
  status: repair.status,
})

async function loadBatches({ desk, actor }: ReadingDesk): Promise<BatchState[]> {
  const streams = (await listStreams(desk.store, actor.tenant, 'batch')).map((one) => one.stream)
  const { facts } = await loadStreams(desk.store, actor.tenant, streams)
  return streams.flatMap((stream) => foldBatch(facts, stream, desk.now(null)) ?? [])
}

async function loadInstruments({ desk, actor }: ReadingDesk): Promise<InstrumentState[]> {
  const streams = (await listStreams(desk.store, actor.tenant, 'instrument')).map((one) => one.stream)
  const { facts } = await loadStreams(desk.store, actor.tenant, streams)
  return streams.flatMap((stream) => foldInstrument(facts, stream, desk.now(null)) ?? [])
}
