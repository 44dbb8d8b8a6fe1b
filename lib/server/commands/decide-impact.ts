import { factCommand } from './fact-command'

/** Record the decision for one repair after an impact search, "no effect" included. Refusals: those of every fact command. */
export const decideImpact = factCommand({ kind: 'impact-decided', on: 'repair', act: 'decide impact' })
