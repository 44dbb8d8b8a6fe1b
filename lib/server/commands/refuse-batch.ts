import { factCommand } from './fact-command'

/** Refuse a batch for use, with the reason. Refusals: those of every fact command. */
export const refuseBatch = factCommand({ kind: 'batch-refused', on: 'batch', act: 'quarantine' })
