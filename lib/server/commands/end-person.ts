import { factCommand } from './fact-command'

/** Record that a person left. Refusals: those of every fact command. */
export const endPerson = factCommand({ kind: 'person-left', on: 'person', act: 'administer' })
