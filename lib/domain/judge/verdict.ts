import type { FactId, StreamId } from '../facts/fact'
import type { Criterion } from '../specification'
import type { Moment } from '../time'

/** Fail and not proven are different; unknown never rolls up to pass. */
export type VerdictKind = 'pass' | 'fail' | 'not proven'

/** One thing found: codes are kebab-case and never change once logged. `found` and `limit` are shown text with digits as recorded. */
export type Finding = {
  code: string
  mark?: string
  found?: string
  limit?: string
  clause: string
  /** Plain words completing the code: who, which batch, which certificate, until when. */
  detail?: string
  facts: FactId[]
}

/** A doubt about the basis of a result: undecided, apart from the verdict. */
export type Question = {
  cause: FactId
  causeKind:
    | 'batch recalled'
    | 'batch quarantined'
    | 'instrument found wrong'
    | 'qualification corrected'
    | 'event'
    | 'clock'
  stream: StreamId
  since: Moment
  /** What the readings would say with the known error taken off. */
  corrected?: { found: string; verdict: VerdictKind }
  decision?: FactId
}

/** Result of one criterion in one attempt of a point. */
export type CriterionResult = {
  criterion: Criterion
  specification: StreamId
  revision: number
  limit: string
  found: string
  verdict: VerdictKind
  findings: Finding[]
  questions: Question[]
  /** Figures for screens and the dossier, exact text: present where the rule has them. */
  figures: { count?: number; worst?: string; worstMark?: string; mean?: string; planned?: number }
  /** Lines of arithmetic from the raw values. */
  working: string[]
  /** What was taken in, where the rule itself found it among other points: each with its fact. */
  inputs?: { label: string; value: string; fact: FactId | null }[]
}

/** Roll up: any fail is fail; otherwise any not proven, or nothing judged at all, is not proven. */
export function rollUp(verdicts: readonly VerdictKind[]): VerdictKind {
  if (verdicts.includes('fail')) return 'fail'
  return verdicts.length === 0 || verdicts.includes('not proven') ? 'not proven' : 'pass'
}
