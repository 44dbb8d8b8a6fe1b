import { factCommand } from './fact-command'

/** Note an event that makes earlier releases fall by the plan: wet, weep, touched, stopped and the others. Anyone on the job may, without blame. Refusals: those of every fact command. */
export const noteEvent = factCommand({ kind: 'event-noted', on: 'repair', act: 'note event', observation: true })
