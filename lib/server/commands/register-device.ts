import { factCommand } from './fact-command'

/** Register a device under its id. Refusals: `exists-already` and those of every fact command. */
export const registerDevice = factCommand({ kind: 'device-registered', on: 'device', act: 'keep devices', opens: true })
