import { factCommand } from './fact-command'

/** Record to whom and how a recall or finding was told. Refusals: those of every fact command. */
export const notifyOwner = factCommand({ kind: 'owner-notified', on: 'batch', act: 'recall' })
