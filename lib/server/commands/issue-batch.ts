import { factCommand } from './fact-command'

/** Issue an amount of a batch to a repair. Refusals: those of every fact command. */
export const issueBatch = factCommand({ kind: 'batch-issued', on: 'batch', act: 'keep stores', observation: true })
