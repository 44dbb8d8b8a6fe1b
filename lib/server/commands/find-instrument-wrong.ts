import { factCommand } from './fact-command'

/** Record that an instrument was found wrong: results since the last good full check come in question. Refusals: those of every fact command. */
export const findInstrumentWrong = factCommand({ kind: 'found-wrong', on: 'instrument', act: 'find instrument wrong' })
