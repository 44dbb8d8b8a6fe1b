import { factCommand } from './fact-command'

/** Mark a point not applicable in an attempt, with the reason: neither blank, nor zero, nor a pass. Refusals: those of every fact command. */
export const markNotApplicable = factCommand({ kind: 'marked-not-applicable', on: 'repair', act: 'mark not applicable' })
