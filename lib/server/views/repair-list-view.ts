import { cache } from 'react'
import type { RepairState } from '@/lib/domain/fold/repair-state'
import { listStreams } from '@/lib/server/store/list-streams'
import { mayRead, type ReadingDesk } from './reading-desk'

/** Every repair that the reader may see, folded now, by number. */
export const loadRepairStates = cache(async (reading: ReadingDesk): Promise<RepairState[]> => {
  const { desk, actor } = reading
  const streams = await listStreams(desk.store, actor.tenant, 'repair')
  const states: RepairState[] = []
  for (const { stream } of streams) {
    const state = await desk.stateOf(stream)
    if (state && mayRead(reading, state.opened.body.project)) states.push(state)
  }
  return states
})
