import { cache } from 'react'
import type { RepairState } from '@/lib/domain/fold/repair-state'
import { loadRepairs } from '@/lib/server/store/load-repair'
import { mayRead, type ReadingDesk } from './reading-desk'

/** Every repair that the reader may see, by number, with all facts there are and at most a minute old. */
export const loadRepairStates = cache(async (reading: ReadingDesk): Promise<RepairState[]> => {
  const { desk, actor } = reading
  const states = await loadRepairs(desk.store, actor.tenant)
  return states.filter((state) => mayRead(reading, state.opened.body.project))
})
