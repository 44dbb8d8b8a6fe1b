import { foldPlan } from '@/lib/domain/fold/fold-revisions'
import { loadStreamsOfKind } from '@/lib/server/store/load-facts'
import type { ReadingDesk } from './reading-desk'
import type { RevisionRow } from './specification-list-view'

/** Every inspection and test plan, by number. */
export async function loadPlanRows({ desk, actor }: ReadingDesk): Promise<RevisionRow[]> {
  const { facts } = await loadStreamsOfKind(desk.store, actor.tenant, 'plan')
  return [...new Set(facts.map((fact) => fact.stream))].flatMap((stream): RevisionRow[] => {
    const state = foldPlan(facts, stream, desk.now(null))
    const body = state.inForce?.body.body ?? state.revisions.at(-1)?.body.body ?? state.draft?.body.body
    if (!body) return []
    return [
      {
        stream,
        number: body.number,
        title: body.title,
        about: `${body.points.length} points`,
        inForce: state.inForce
          ? { revision: state.inForce.body.revision, issuedOn: state.inForce.body.issuedOn }
          : null,
        hasDraft: state.draft !== null,
        revisionCount: state.revisions.length,
      },
    ]
  })
}
