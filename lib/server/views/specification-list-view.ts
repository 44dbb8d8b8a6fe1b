import type { StreamId } from '@/lib/domain/facts/fact'
import { foldSpecification } from '@/lib/domain/fold/fold-revisions'
import type { CalendarDay } from '@/lib/domain/time'
import { loadStreamsOfKind } from '@/lib/server/store/load-facts'
import type { ReadingDesk } from './reading-desk'

/** A specification or plan in a list: the revision in force and whether a draft waits. */
export type RevisionRow = {
  stream: StreamId
  number: string
  title: string
  about: string
  inForce: { revision: number; issuedOn: CalendarDay } | null
  hasDraft: boolean
  revisionCount: number
}

/** Every specification, by number. */
export async function loadSpecificationRows({ desk, actor }: ReadingDesk): Promise<RevisionRow[]> {
  const { facts } = await loadStreamsOfKind(desk.store, actor.tenant, 'specification')
  return [...new Set(facts.map((fact) => fact.stream))].flatMap((stream): RevisionRow[] => {
    const state = foldSpecification(facts, stream, desk.now(null))
    const body = state.inForce?.body.body ?? state.revisions.at(-1)?.body.body ?? state.draft?.body.body
    if (!body) return []
    return [
      {
        stream,
        number: body.number,
        title: body.title,
        about: `${body.wrap}, ${body.criteria.length} criteria`,
        inForce: state.inForce
          ? { revision: state.inForce.body.revision, issuedOn: state.inForce.body.issuedOn }
          : null,
        hasDraft: state.draft !== null,
        revisionCount: state.revisions.length,
      },
    ]
  })
}
