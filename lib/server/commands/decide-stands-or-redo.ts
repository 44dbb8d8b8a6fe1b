import { factCommand } from './fact-command'

/** Decide for a performed point whether it stands under a new revision or is to be redone. Refusals: those of every fact command. */
export const decideStandsOrRedo = factCommand({ kind: 'stands-or-redo', on: 'repair', act: 'decide revision' })
