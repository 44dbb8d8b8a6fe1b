import { factCommand } from './fact-command'

/** Ask the engineer a technical query. Refusals: those of every fact command. */
export const raiseQuery = factCommand({ kind: 'query-raised', on: 'repair', act: 'raise query', observation: true })
