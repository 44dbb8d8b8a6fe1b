import type { ReactNode } from 'react'
import type { PersonId } from '@/lib/domain/facts/fact'
import type { RecordState } from '@/lib/domain/fold/repair-state'
import { ConflictSides } from './conflict-sides'

/** Two records of one point that contradict each other, side by side, and what a person can do about it. */
export function Contradiction({
  sides,
  names,
  children,
}: {
  sides: readonly RecordState[]
  names: Record<PersonId, string>
  children: ReactNode
}) {
  return (
    <section className="note question-note">
      <strong>Two records contradict each other</strong>
      <span>Both stay in the record. Nothing is released here until it is said which governs.</span>
      <ConflictSides sides={sides} names={names} />
      {children}
    </section>
  )
}
