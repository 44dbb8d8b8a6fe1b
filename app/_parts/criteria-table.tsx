import { Fragment } from 'react'
import { Glyph } from '@/app/_ui/glyph'
import { VerdictMark } from '@/app/_ui/verdict-mark'
import { foundBeside, showFinding } from '@/lib/domain/judge/show-finding'
import type { CriterionResult } from '@/lib/domain/judge/verdict'
import { decisionWords } from '@/lib/domain/working/decision-shown'
import { entryPlaces } from '@/lib/domain/working/entry-places'
import type { WorkingGround } from '@/lib/domain/working/working'
import { WorkingFold } from './working-fold'

/** Each criterion with its limit, what was found, clause and verdict; findings, doubts and the arithmetic below it. */
export function CriteriaTable({ ground }: { ground: WorkingGround }) {
  const { attempt } = ground
  const places = entryPlaces(ground.state)
  const hrefOf = (fact: string): string | null => {
    const place = places.get(fact)
    return place
      ? `/repairs/${encodeURIComponent(ground.state.number)}/points/${place.point}?attempt=${place.attempt}#${fact}`
      : null
  }
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
          <Fragment key={result.criterion.id}>
            <tr>
              <th scope="row">
                {result.criterion.title}
                <br />
                <span className="quiet small">
                  clause {result.criterion.clause}, rev {result.revision}
                </span>
              </th>
              <td data-label="Limit">
                {result.limit}
                <DecisionNote result={result} ground={ground} />
              </td>
              <td data-label="Found">
                {foundBeside(result)}
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
              </td>
              <td data-label="">
                <VerdictMark
                  verdict={result.verdict}
                  conceded={attempt.conceded !== null && result.verdict === 'fail'}
                />
              </td>
            </tr>
            <tr className="working-row">
              <td colSpan={4}>
                <WorkingFold result={result} ground={ground} hrefOf={hrefOf} />
              </td>
            </tr>
          </Fragment>
        ))}
      </tbody>
    </table>
  )
}

/** The specification's decision rule beside the limit, with the width of the guard band where it applies. */
function DecisionNote({ result, ground }: { result: CriterionResult; ground: WorkingGround }) {
  const words = decisionWords(result, ground)
  return words ? (
    <>
      <br />
      <span className="quiet small">{words}</span>
    </>
  ) : null
}
