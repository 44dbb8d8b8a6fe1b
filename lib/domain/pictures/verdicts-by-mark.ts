import type { AttemptState } from '../fold/repair-state'
import type { VerdictKind } from '../judge/verdict'

/**
 * Verdict on each reading of a quantity in an attempt, by mark, from the criteria that judge each reading: fail where a finding names the mark, not proven
 * where the mark yields no number to judge, pass otherwise; null when no criterion judges each reading of it.
 */
export function verdictsByMark(
  attempt: AttemptState,
  quantity: string,
  numbered: (mark: string) => boolean,
): (mark: string) => VerdictKind | null {
  const judging = attempt.criteria.filter(
    ({ criterion: { rule } }) => rule.kind === 'each' && rule.quantity === quantity,
  )
  const failed = new Set(
    judging.flatMap((one) =>
      one.verdict === 'fail'
        ? one.findings.flatMap((finding) => (finding.mark === undefined ? [] : [finding.mark]))
        : [],
    ),
  )
  if (judging.length === 0) return () => null
  return (mark) => (failed.has(mark) ? 'fail' : numbered(mark) ? 'pass' : 'not proven')
}
