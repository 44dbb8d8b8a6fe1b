import { factCommand } from './fact-command'

/** Record a check on a reference piece. Refusals: those of every fact command. */
export const checkInstrument = factCommand({
  kind: 'check-made',
  on: 'instrument',
  act: 'check instrument',
  observation: true,
})
