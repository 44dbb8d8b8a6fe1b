import type { CriterionResult } from '@/lib/domain/judge/verdict'
import type { WorkingGround } from '@/lib/domain/working/working'
import { workingOf } from '@/lib/domain/working/working-of'

/** How a criterion was judged, opened by a tap: formula, inputs that lead to their entries, arithmetic, limit, decision rule, source. */
export function WorkingFold({
  result,
  ground,
  hrefOf,
}: {
  result: CriterionResult
  ground: WorkingGround
  hrefOf: (fact: string) => string | null
}) {
  const working = workingOf(result, ground)
  return (
    <details className="working">
      <summary>Show the working</summary>
      <p className="formula">{working.formula}</p>
      {working.inputs.length > 0 ? (
        <dl>
          {working.inputs.map((input, place) => {
            const href = input.fact ? hrefOf(input.fact) : null
            return (
              // Labels repeat where a thing was read twice; the place in the list is what tells them apart.
              // biome-ignore lint/suspicious/noArrayIndexKey: see above
              <div key={place} style={{ display: 'contents' }}>
                <dt>{input.label}</dt>
                <dd>
                  {input.value}
                  {href ? (
                    <>
                      {' '}
                      <a href={href} aria-label={`Entry of ${input.label}`}>
                        entry
                      </a>
                    </>
                  ) : null}
                </dd>
              </div>
            )
          })}
        </dl>
      ) : (
        <p className="quiet">Nothing recorded yet to judge from.</p>
      )}
      {working.arithmetic.map((line) => (
        <p key={line}>
          <code>{line}</code>
        </p>
      ))}
      <p>
        <strong>Limit</strong> {working.limit}
      </p>
      {working.decision.map((line) => (
        <p key={line}>{line}</p>
      ))}
      <p className="quiet">Source: {working.source}.</p>
    </details>
  )
}
