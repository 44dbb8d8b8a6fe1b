import { factCommand } from './fact-command'

/** Record how far a device's clock was off at contact. Observed times stay as they are. Refusals: those of every fact command. */
export const checkClock = factCommand({ kind: 'clock-checked', on: 'device', act: 'keep devices', observation: true })
