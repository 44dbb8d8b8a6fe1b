import { factCommand } from './fact-command'

/** Register a device under its id, once; a key may have been taken on it before. Refusals: `exists-already` and those of every fact command. */
export const registerDevice = factCommand({
  kind: 'device-registered',
  on: 'device',
  act: 'keep devices',
  begins: true,
})
