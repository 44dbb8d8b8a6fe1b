import { factCommand } from './fact-command'

/** Bar a batch from use everywhere until the quarantine is lifted by two persons. Refusals: those of every fact command. */
export const quarantineBatch = factCommand({ kind: 'batch-quarantined', on: 'batch', act: 'quarantine' })
