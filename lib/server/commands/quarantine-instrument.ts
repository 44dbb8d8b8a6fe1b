import { factCommand } from './fact-command'

/** Bar an instrument from use until the quarantine is lifted by two persons. Refusals: those of every fact command. */
export const quarantineInstrument = factCommand({ kind: 'instrument-quarantined', on: 'instrument', act: 'quarantine' })
