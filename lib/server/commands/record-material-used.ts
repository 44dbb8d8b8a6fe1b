import { factCommand } from './fact-command'

/** Record that material of a batch went into a point beyond what its records say. Refusals: those of every fact command. */
export const recordMaterialUsed = factCommand({
  kind: 'material-used',
  on: 'repair',
  act: 'enter receipts',
  observation: true,
})
