import { factCommand } from './fact-command'

/** Name a party of a project. Refusals: those of every fact command. */
export const nameParty = factCommand({ kind: 'party-named', on: 'project', act: 'administer' })
