import type { RepairState } from '../fold/repair-state'
import type { BatchState, InstrumentState } from '../fold/store-states'
import type { KnownBatch, KnownInstrument, KnownRepair } from './find-labelled'

/** A batch as its label may name it. */
export function knownBatch({ stream, number, received, expiresOn }: BatchState): KnownBatch {
  const days = [received.expiresOn, expiresOn].filter((day) => day !== null)
  return { stream, number, gtin: received.gtin ?? null, useBy: [...new Set(days)] }
}

/** An instrument as its label or plate may name it. */
export function knownInstrument({ stream, number, serial, asset }: InstrumentState): KnownInstrument {
  return { stream, number, serial: serial ?? null, asset: asset ?? null }
}

/** A repair as its label may name it: the numbers of its last handover. */
export function knownRepair(state: RepairState): KnownRepair {
  const handover = handoverOf(state)
  return {
    stream: state.stream,
    number: state.number,
    label: handover?.labelNo ?? null,
    asset: handover?.asset ?? null,
  }
}

/** The last handover that was recorded, or null before it. */
export function handoverOf({ points }: RepairState) {
  return (
    points
      .flatMap((point) => point.attempts)
      .flatMap((attempt) => attempt.records)
      .filter((one) => one.overruledBy === null)
      .flatMap(({ record }) => (record.type === 'handover' ? [record] : []))
      .at(-1) ?? null
  )
}
