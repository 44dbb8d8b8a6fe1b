import { factCommand } from './fact-command'

/** Accept a photo or not, with the reason; a photo not accepted is kept. Refusals: those of every fact command. */
export const judgePhoto = factCommand({ kind: 'photo-judged', on: 'repair', act: 'judge photo' })
