import { factCommand } from './fact-command'

/** Record to whom an issued dossier was sent. Refusals: those of every fact command. */
export const recordTransmittal = factCommand({ kind: 'transmitted', on: 'dossier', act: 'issue dossier' })
