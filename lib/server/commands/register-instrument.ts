import { factCommand } from './fact-command'

/** Register an instrument under its number. Refusals: `exists-already` and those of every fact command. */
export const registerInstrument = factCommand({
  kind: 'instrument-registered',
  on: 'instrument',
  act: 'keep instruments',
  opens: true,
})
