import { type PersonId, StreamId } from '@/lib/domain/facts/fact'
import type { RepairState } from '@/lib/domain/fold/repair-state'
import type { Role } from '@/lib/domain/roles'
import { loadNames, mayRead, type ReadingDesk } from './reading-desk'

/** A repair as a page shows it: its folded state, names of persons, and the reader's roles in its project. */
export type RepairView = { state: RepairState; names: Record<PersonId, string>; roles: Role[]; me: PersonId }

/** The repair of a number for who is asking; null when it is not in their record or not theirs to read. */
export async function loadRepairView(reading: ReadingDesk, number: string): Promise<RepairView | null> {
  const stream = StreamId.safeParse(`repair:${number}`)
  if (!stream.success) return null
  const state = await reading.desk.stateOf(stream.data)
  if (!state || !mayRead(reading, state.opened.body.project)) return null
  const { actor, desk } = reading
  return {
    state,
    names: await loadNames(desk),
    roles: actor.rolesOn(state.opened.body.project, desk.today(null)),
    me: actor.person,
  }
}
