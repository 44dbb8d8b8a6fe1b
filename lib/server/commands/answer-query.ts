import { factCommand } from './fact-command'

/** Answer a technical query, binding or not. Refusals: those of every fact command. */
export const answerQuery = factCommand({ kind: 'query-answered', on: 'repair', act: 'answer query' })
