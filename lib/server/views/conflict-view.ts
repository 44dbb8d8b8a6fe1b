import { type ConflictView, conflictView } from '@/lib/domain/fold/conflict-view'
import type { RepairState } from '@/lib/domain/fold/repair-state'
import type { ReadingDesk } from './reading-desk'

/** The conflicts of a point, decided or not, as the point's page shows them. */
export async function loadConflictViews(
  { desk }: Pick<ReadingDesk, 'desk'>,
  state: RepairState,
  no: string,
): Promise<ConflictView[]> {
  const found = state.conflicts.filter((one) => one.point === no)
  if (found.length === 0) return []
  const facts = new Map(((await desk.factsOf(state.stream)) ?? []).map((fact) => [fact.id, fact]))
  const point = state.points.find((one) => one.no === no)
  return found.map((conflict) => conflictView(conflict, point, (id) => facts.get(id)))
}
