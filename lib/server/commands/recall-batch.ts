import { factCommand } from './fact-command'

/** Record that a batch was recalled: every result that relies on it comes in question. Refusals: those of every fact command. */
export const recallBatch = factCommand({ kind: 'batch-recalled', on: 'batch', act: 'recall' })
