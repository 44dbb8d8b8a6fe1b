import { factCommand } from './fact-command'

/** Register a person; the id is permanent and never used again. Refusals: `exists-already` and those of every fact command. */
export const registerPerson = factCommand({ kind: 'person-registered', on: 'person', act: 'administer', opens: true })
