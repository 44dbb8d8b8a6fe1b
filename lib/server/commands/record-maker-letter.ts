import { factCommand } from './fact-command'

/** Record a maker's letter that extends a batch to a new date. Refusals: those of every fact command. */
export const recordMakerLetter = factCommand({ kind: 'maker-letter', on: 'batch', act: 'keep stores' })
