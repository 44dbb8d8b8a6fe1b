'use client'
import { VerdictMark } from '@/app/_ui/verdict-mark'
import { foundBeside, showFinding } from '@/lib/domain/judge/show-finding'
import type { CriterionResult } from '@/lib/domain/judge/verdict'

const SHOWN_AT_MOST = 3

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
            {result.criterion.title}
            <span className="limit">{result.limit}</span>
          </span>
          <VerdictMark verdict={result.verdict} />
          <span className="finding">{toldOf(result).join(' · ')}</span>
        </li>
      ))}
    </ul>
  )
}

/** What was found, and the first of the findings. */
function toldOf(result: CriterionResult): string[] {
  const told = result.findings.map(showFinding)
  return [
    foundBeside(result),
    ...told.slice(0, SHOWN_AT_MOST),
    told.length > SHOWN_AT_MOST ? `and ${told.length - SHOWN_AT_MOST} more` : null,
  ].filter((one) => one !== null)
}
