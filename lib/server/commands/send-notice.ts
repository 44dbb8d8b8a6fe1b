import { factCommand } from './fact-command'

/** Record the notice sent for a hold or witness point: to whom, how, when and for when. Refusals: those of every fact command. */
export const sendNotice = factCommand({ kind: 'notice-sent', on: 'repair', act: 'send notice' })
