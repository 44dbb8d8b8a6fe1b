import { factCommand } from './fact-command'

/** Discharge a condition of an acceptance with its evidence. Refusals: those of every fact command. */
export const dischargeCondition = factCommand({
  kind: 'condition-discharged',
  on: 'repair',
  act: 'discharge condition',
})
