import { factCommand } from './fact-command'

/** Open a project: its site, owner and the UTC offset kept there. Refusals: `exists-already` and those of every fact command. */
export const openProject = factCommand({ kind: 'project-opened', on: 'project', act: 'administer', opens: true })
