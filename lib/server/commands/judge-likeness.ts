import { factCommand } from './fact-command'

/** Decide what the likeness of two photos means. Refusals: those of every fact command. */
export const judgeLikeness = factCommand({ kind: 'likeness-judged', on: 'repair', act: 'judge photo' })
