import type { FactId, PersonId } from '@/lib/domain/facts/fact'
import type { ConflictState } from '@/lib/domain/fold/conflict-state'
import { showMoment } from '@/lib/domain/time'
import { NotSent } from './not-sent'
import { RULING_WORDS } from './ruling-words'

/** Conflicts that were ruled on, with the ruling: they stay readable. Nothing where none was. */
export function RuledConflicts({
  conflicts,
  names,
  unsent,
}: {
  conflicts: readonly ConflictState[]
  names: Record<PersonId, string>
  /** Facts that are on this device alone. */
  unsent?: ReadonlySet<FactId>
}) {
  const ruled = conflicts.flatMap((one) => (one.resolved ? [{ ...one, resolved: one.resolved }] : []))
  if (ruled.length === 0) return null
  return (
    <section className="sheet">
      <h2>Conflicts, ruled on</h2>
      <ul className="plain-list">
        {ruled.map(({ facts, noted, text, resolved }) => (
          <li key={noted ?? facts.join()}>
            {text}.
            <br />
            <strong>
              {resolved.kind === 'conflict-settled'
                ? RULING_WORDS[resolved.body.ruling]
                : 'One record governs, all are kept'}
            </strong>
            : {resolved.body.reason}
            <br />
            <span className="quiet small">
              {names[resolved.observedBy] ?? resolved.observedBy}, {showMoment(resolved.observedAt)}
            </span>
            {unsent?.has(resolved.id) ? <NotSent /> : null}
          </li>
        ))}
      </ul>
    </section>
  )
}
