/** A computation that may give no number. It is neither pass, fail nor not proven. Codes never change once logged. */
export interface Refusal {
  readonly refused: string
}

/** A refusal with its code, for example `missing_rh_pct` or `outside_table`. */
export function refuse(code: string): Refusal {
  return { refused: code }
}

/** True when the answer is a refusal. Any other object, number, list or null is an answer. */
export function isRefused(answer: unknown): answer is Refusal {
  return typeof answer === 'object' && answer !== null && 'refused' in answer && typeof answer.refused === 'string'
}
