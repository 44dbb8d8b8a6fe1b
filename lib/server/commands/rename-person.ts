import { factCommand } from './fact-command'

/** Record a new name of a person, with the reason; earlier records keep the name they were signed with. Refusals: those of every fact command. */
export const renamePerson = factCommand({ kind: 'person-renamed', on: 'person', act: 'administer' })
