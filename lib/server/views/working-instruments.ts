import type { StreamId } from '@/lib/domain/facts/fact'
import { foldInstrument } from '@/lib/domain/fold/fold-instrument'
import type { AttemptState } from '@/lib/domain/fold/repair-state'
import type { InstrumentState } from '@/lib/domain/fold/store-states'
import { ownRecords } from '@/lib/domain/working/working'
import type { ReadingDesk } from './reading-desk'

/** The instruments that the readings of an attempt were taken with, as their streams tell now: for the uncertainty on their certificates. */
export async function loadWorkingInstruments(
  { desk }: ReadingDesk,
  attempt: AttemptState,
): Promise<Record<StreamId, InstrumentState>> {
  const streams = new Set(
    ownRecords(attempt).flatMap((one) =>
      one.yields.readings.flatMap(({ instrument }) => (instrument ? [instrument] : [])),
    ),
  )
  const instruments: Record<StreamId, InstrumentState> = {}
  for (const stream of streams) {
    const state = foldInstrument((await desk.factsOf(stream)) ?? [], stream, desk.now(null))
    if (state) instruments[stream] = state
  }
  return instruments
}
