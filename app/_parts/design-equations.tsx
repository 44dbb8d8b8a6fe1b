import type { Equation } from '@/lib/domain/design/equation'

/** Each equation in symbols and with its numbers put in, its results, and where it comes from. What is not computed says why. */
export function DesignEquations({ equations }: { equations: readonly Equation[] }) {
  return (
    <ol className="equations">
      {equations.map((one) => (
        <li key={one.id}>
          <h3>{one.title}</h3>
          <p className="equation">{one.formula}</p>
          {one.put && one.put !== one.formula ? <p className="equation put">{one.put}</p> : null}
          {one.refusal ? (
            <p className="not-proven">
              <strong>Not computed:</strong> {one.refusal}
            </p>
          ) : (
            <dl className="equation-results">
              {one.results.map((result) => (
                <div key={result.symbol}>
                  <dt>{result.symbol} =</dt>
                  <dd>{result.text}</dd>
                </div>
              ))}
            </dl>
          )}
          <p className="quiet small">
            {one.source}. Confidence {one.confidence}.{one.settle ? ` ${one.settle}` : ''} {one.notes.join(' ')}
          </p>
        </li>
      ))}
    </ol>
  )
}
