import { factCommand } from './fact-command'

/** Take an amount of a batch back from a repair. Refusals: those of every fact command. */
export const returnBatch = factCommand({ kind: 'batch-returned', on: 'batch', act: 'keep stores', observation: true })
