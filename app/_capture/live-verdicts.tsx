'use client'
import { VerdictMark } from '@/app/_ui/verdict-mark'
import { showFinding } from '@/lib/domain/judge/show-finding'
import type { CriterionResult } from '@/lib/domain/judge/verdict'

/** The criteria of this point as they stand with what is keyed, from the same code that the server uses. */
export function LiveVerdicts({ results }: { results: readonly CriterionResult[] }) {
  if (results.length === 0)
    return (
      <p className="note">
        The specification has no criterion for this point: what is entered is recorded, not judged.
      </p>
    )
  return (
    <ul className="live" aria-label="Criteria so far">
      {results.map((result) => (
        <li key={result.criterion.id}>
          <span>
            {result.criterion.title} <span className="quiet">{result.limit}</span>
          </span>
          <VerdictMark verdict={result.verdict} />
          <span className="finding">
            {result.found}
            {result.findings.slice(0, 3).map((finding) => (
              <span key={`${finding.code}${finding.mark ?? ''}${finding.detail ?? ''}`}> · {showFinding(finding)}</span>
            ))}
            {result.findings.length > 3 ? <span> · and {result.findings.length - 3} more</span> : null}
          </span>
        </li>
      ))}
    </ul>
  )
}
