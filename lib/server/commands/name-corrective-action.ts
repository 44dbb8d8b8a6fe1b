import { factCommand } from './fact-command'

/** Name a corrective action with its owner and due day. Refusals: those of every fact command. */
export const nameCorrectiveAction = factCommand({ kind: 'corrective-action', on: 'nonconformance', act: 'contain' })
