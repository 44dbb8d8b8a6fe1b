import { factCommand } from './fact-command'

/** Put a repair on hold, resume it or abandon it, with the reason. Refusals: those of every fact command. */
export const holdRepair = factCommand({ kind: 'repair-held', on: 'repair', act: 'hold repair' })
