import { factCommand } from './fact-command'

/** Record a qualification, or correct one (`corrects` with its reason): a correction reaches every result that relied on it. Refusals: those of every fact command. */
export const recordQualification = factCommand({
  kind: 'qualification-recorded',
  on: 'person',
  act: 'keep qualifications',
})
