import { factCommand } from './fact-command'

/** Note that a batch was opened: its life after opening starts to run. Refusals: those of every fact command. */
export const openBatch = factCommand({ kind: 'batch-opened', on: 'batch', act: 'keep stores', observation: true })
