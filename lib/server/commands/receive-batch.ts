import { factCommand } from './fact-command'

/** Receive a batch into the store: opens its stream with what the label and certificate say. Refusals: `exists-already` and those of every fact command. */
export const receiveBatch = factCommand({ kind: 'batch-received', on: 'batch', act: 'keep stores', opens: true })
