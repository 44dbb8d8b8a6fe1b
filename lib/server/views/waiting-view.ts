import type { WindowState } from '@/lib/domain/fold/repair-state'
import type { WaitingLine } from '@/lib/domain/waiting/waiting-line'
import { waitingLines } from '@/lib/domain/waiting/waiting-lines'
import type { ReadingDesk } from './reading-desk'
import { loadRepairStates } from './repair-list-view'

export type { WaitingLine }
export type WaitingView = { lines: WaitingLine[]; windows: { repair: string; window: WindowState }[]; others: number }

/** What waits for the reader: holds of their party to release, open points to record, nonconformances to decide, and windows that run. */
export async function loadWaitingView(reading: ReadingDesk): Promise<WaitingView> {
  const states = (await loadRepairStates(reading)).filter((state) => !['removed', 'abandoned'].includes(state.status))
  const lines = states.flatMap((state) =>
    waitingLines(
      state,
      reading.actor.rolesOn(state.opened.body.project, reading.desk.today(null)),
      reading.actor.person,
    ),
  )
  const windows = states.flatMap((state) =>
    state.windows
      .filter((one) => one.state === 'running' || one.state === 'warning')
      .map((window) => ({ repair: state.number, window })),
  )
  return { lines, windows, others: states.length }
}
