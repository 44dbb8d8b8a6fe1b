import { factCommand } from './fact-command'

/** Record an engineering review of the life and the next inspection. Refusals: those of every fact command. */
export const reviseLife = factCommand({ kind: 'life-reviewed', on: 'repair', act: 'review life' })
