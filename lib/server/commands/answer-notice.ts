import { factCommand } from './fact-command'

/** Record what came of a notice. Silence never waives a hold. Refusals: those of every fact command. */
export const answerNotice = factCommand({ kind: 'notice-answered', on: 'repair', act: 'send notice' })
