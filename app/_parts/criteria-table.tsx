import { Glyph } from '@/app/_ui/glyph'
import { VerdictMark } from '@/app/_ui/verdict-mark'
import type { AttemptState } from '@/lib/domain/fold/repair-state'
import { showFinding } from '@/lib/domain/judge/show-finding'

/** Each criterion with its limit, what was found, clause and verdict; findings, doubts and the arithmetic below it. */
export function CriteriaTable({ attempt }: { attempt: AttemptState }) {
  if (attempt.criteria.length === 0)
    return <p className="note">The specification has no criterion here: what is recorded is not judged.</p>
  return (
    <table className="cards">
      <thead>
        <tr>
          <th>Criterion</th>
          <th>Limit</th>
          <th>Found</th>
          <th>Verdict</th>
        </tr>
      </thead>
      <tbody>
        {attempt.criteria.map((result) => (
          <tr key={result.criterion.id}>
            <th scope="row">
              {result.criterion.title}
              <br />
              <span className="quiet small">
                clause {result.criterion.clause}, rev {result.revision}
              </span>
            </th>
            <td data-label="Limit">{result.limit}</td>
            <td data-label="Found">
              {result.found}
              {result.findings.map((finding) => (
                <p key={`${finding.code}${finding.mark ?? ''}${finding.detail ?? ''}`} className="small">
                  {showFinding(finding)}
                </p>
              ))}
              {result.questions.map((question) => (
                <p key={question.cause} className="mark question small">
                  <Glyph name="question" />
                  {question.causeKind}, {question.stream.replace(':', ' ')}
                  {question.corrected ? `: corrected ${question.corrected.found}, ${question.corrected.verdict}` : ''}
                  {question.decision ? ', decided' : ''}
                </p>
              ))}
              {result.working.length > 0 ? (
                <details>
                  <summary className="quiet small">Working</summary>
                  {result.working.map((line) => (
                    <p key={line} className="small">
                      <code>{line}</code>
                    </p>
                  ))}
                </details>
              ) : null}
            </td>
            <td data-label="">
              <VerdictMark verdict={result.verdict} conceded={attempt.conceded !== null && result.verdict === 'fail'} />
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}
