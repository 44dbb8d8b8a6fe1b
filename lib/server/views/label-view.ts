import type { StreamId } from '@/lib/domain/facts/fact'
import { handoverOf } from '@/lib/domain/labels/known-things'
import { batchLabel, instrumentLabel, type LabelContent, repairLabel } from '@/lib/domain/labels/label-content'
import { loadBatchView } from './batch-view'
import { loadInstrumentView } from './instrument-view'
import type { ReadingDesk } from './reading-desk'
import { loadRepairView } from './repair-view'

/** What is printed on the label of a batch; null when it was never received. */
export async function loadBatchLabel(reading: ReadingDesk, stream: StreamId): Promise<LabelContent | null> {
  const view = await loadBatchView(reading, stream)
  if (!view) return null
  const { number, expiresOn, received } = view.state
  return batchLabel({
    stream,
    number,
    product: received.product,
    gtin: received.gtin ?? null,
    madeOn: received.madeOn ?? null,
    expiresOn,
  })
}

/** What is printed on the label of an instrument; null when it is not registered. */
export async function loadInstrumentLabel(reading: ReadingDesk, stream: StreamId): Promise<LabelContent | null> {
  const view = await loadInstrumentView(reading, stream)
  if (!view) return null
  const { number, kind, serial, asset } = view.registered
  return instrumentLabel({ stream, number, kind, serial: serial ?? null, asset: asset ?? null })
}

/** What is printed on the label of a repair; null when it is not there or not the reader's to read. */
export async function loadRepairLabel(reading: ReadingDesk, number: string): Promise<LabelContent | null> {
  const view = await loadRepairView(reading, number)
  if (!view) return null
  const { state } = view
  const { body } = state.opened
  const handover = handoverOf(state)
  return repairLabel({
    stream: state.stream,
    number: state.number,
    line: `${body.line} ${body.lineTitle}`,
    place: `${body.datum}, ${body.clock} o’clock`,
    label: handover?.labelNo ?? null,
    asset: handover?.asset ?? null,
    nextInspectionOn: state.acceptance?.nextInspectionOn ?? null,
    restrictions: handover?.restrictions ?? [],
  })
}
