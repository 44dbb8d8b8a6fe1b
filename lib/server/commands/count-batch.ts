import { factCommand } from './fact-command'

/** Record what was counted in store of a batch; a gap in its mass balance is a finding, not a refusal. Refusals: those of every fact command. */
export const countBatch = factCommand({ kind: 'batch-counted', on: 'batch', act: 'keep stores', observation: true })
