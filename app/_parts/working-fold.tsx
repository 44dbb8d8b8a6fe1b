import type { CriterionResult } from '@/lib/domain/judge/verdict'
import type { WorkingGround, WorkingInput } from '@/lib/domain/working/working'
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
        [...groupsByFact(working.inputs)].map(([fact, inputs]) => {
          const href = fact ? hrefOf(fact) : null
          return (
            <p key={fact ?? 'given'}>
              {inputs.map((input) => `${input.label} ${input.value}`).join('; ')}
              {href ? (
                <>
                  {' '}
                  <a href={href} aria-label={`The entry that says: ${inputs[0]?.label ?? ''}`}>
                    entry
                  </a>
                </>
              ) : null}
            </p>
          )
        })
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

function groupsByFact(inputs: readonly WorkingInput[]): Map<string | null, WorkingInput[]> {
  const groups = new Map<string | null, WorkingInput[]>()
  for (const one of inputs) groups.set(one.fact, [...(groups.get(one.fact) ?? []), one])
  return groups
}
