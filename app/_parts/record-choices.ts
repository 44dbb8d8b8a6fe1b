import { shortDevice } from '@/app/_ui/short-device'
import type { FactId, PersonId } from '@/lib/domain/facts/fact'
import type { RecordState } from '@/lib/domain/fold/repair-state'
import { showMoment } from '@/lib/domain/time'

/** A record between which a person chooses: its fact, and whose, when and on which device in words. */
export type RecordChoice = { id: FactId; label: string }

/** The records of a contradiction as they are chosen from. */
export function recordChoices(sides: readonly RecordState[], names: Record<PersonId, string>): RecordChoice[] {
  return sides.map(({ fact }) => ({
    id: fact.id,
    label: `${names[fact.observedBy] ?? fact.observedBy}, ${showMoment(fact.observedAt)}, device ${shortDevice(fact.device.id)}`,
  }))
}
