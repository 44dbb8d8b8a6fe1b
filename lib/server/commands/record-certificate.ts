import { factCommand } from './fact-command'

/** Record a calibration certificate; earlier ones stay as they were. Refusals: those of every fact command. */
export const recordCertificate = factCommand({
  kind: 'certificate-recorded',
  on: 'instrument',
  act: 'keep instruments',
})
