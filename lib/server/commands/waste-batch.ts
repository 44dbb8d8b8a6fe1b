import { factCommand } from './fact-command'

/** Write off an amount of a batch with its reason. Refusals: those of every fact command. */
export const wasteBatch = factCommand({ kind: 'batch-wasted', on: 'batch', act: 'keep stores', observation: true })
