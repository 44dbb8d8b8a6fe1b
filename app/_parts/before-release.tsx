import type { AttemptState } from '@/lib/domain/fold/repair-state'

/** What a release of an attempt still lacks. */
export function BeforeRelease({ attempt: { missing } }: { attempt: Pick<AttemptState, 'missing'> }) {
  return (
    <section className="sheet">
      <h2>Before release</h2>
      {missing.length === 0 ? (
        <p className="pass">Nothing is missing.</p>
      ) : (
        <ul className="plain-list">
          {missing.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      )}
    </section>
  )
}
