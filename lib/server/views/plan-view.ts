import type { StreamId } from '@/lib/domain/facts/fact'
import { foldPlan } from '@/lib/domain/fold/fold-revisions'
import { cycleOfBlocks, type Plan } from '@/lib/domain/plan'
import { changesOfPlan } from './plan-changes'
import { loadNames, type ReadingDesk } from './reading-desk'
import type { Change } from './specification-changes'
import type { RevisionLine } from './specification-view'

export type PlanView = {
  stream: StreamId
  length: number
  shown: 'draft' | number
  isInForce: boolean
  body: Plan
  revisions: RevisionLine[]
  inForce: number | null
  nextRevision: number
  draft: Plan | null
  changes: Change[] | null
  /** Points of a circle of blocks in the draft: it cannot be issued so. */
  draftCycle: string[] | null
}

/** A plan as its page shows it: the revision asked for, or the one in force, or the draft. Null when there is no such plan or revision. */
export async function loadPlanView(
  { desk }: Pick<ReadingDesk, 'desk'>,
  stream: StreamId,
  which?: string,
): Promise<PlanView | null> {
  const facts = await desk.factsOf(stream)
  if (!facts) return null
  const { draft, revisions, inForce, nextRevision } = foldPlan(facts, stream, desk.now(null))
  const names = await loadNames(desk)
  const isOpen = which === undefined || which === ''
  const asked =
    which === 'draft'
      ? null
      : isOpen
        ? (inForce ?? revisions.at(-1) ?? null)
        : (revisions.find((one) => String(one.body.revision) === which) ?? null)
  const body = asked?.body.body ?? (isOpen || which === 'draft' ? draft?.body.body : undefined)
  if (!body) return null
  const before = asked ? revisions.filter((one) => one.body.revision < asked.body.revision).at(-1) : revisions.at(-1)
  return {
    stream,
    length: facts.length,
    shown: asked ? asked.body.revision : 'draft',
    isInForce: asked !== null && asked.id === inForce?.id,
    body,
    inForce: inForce?.body.revision ?? null,
    nextRevision,
    draft: draft?.body.body ?? null,
    draftCycle: draft ? cycleOfBlocks(draft.body.body) : null,
    revisions: revisions.map(({ body: one }) => ({
      revision: one.revision,
      issuedOn: one.issuedOn,
      changes: one.changes,
      approvedBy: names[one.approvedBy] ?? one.approvedBy,
      second: one.second ? (names[one.second] ?? one.second) : null,
    })),
    changes: before ? changesOfPlan(before.body.body, body) : null,
  }
}
