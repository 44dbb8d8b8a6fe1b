import { factCommand } from './fact-command'

/** Record that a corrective action is done, with its evidence. Refusals: those of every fact command. */
export const finishCorrectiveAction = factCommand({ kind: 'corrective-action-done', on: 'nonconformance', act: 'contain' })
