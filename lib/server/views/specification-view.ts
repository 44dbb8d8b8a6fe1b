import type { StreamId } from '@/lib/domain/facts/fact'
import { foldSpecification } from '@/lib/domain/fold/fold-revisions'
import type { PointNo, Specification } from '@/lib/domain/specification'
import type { CalendarDay } from '@/lib/domain/time'
import { loadNames, type ReadingDesk } from './reading-desk'
import { type Change, changesOfSpecification, limitOfCriterion } from './specification-changes'

export type RevisionLine = {
  revision: number
  issuedOn: CalendarDay
  changes: string
  approvedBy: string
  second: string | null
}
export type CriterionLine = { id: string; clause: string; title: string; limit: string; kind: string }
export type SpecificationView = {
  stream: StreamId
  length: number
  shown: 'draft' | number
  isInForce: boolean
  body: Specification
  byPoint: { point: PointNo; criteria: CriterionLine[] }[]
  revisions: RevisionLine[]
  inForce: number | null
  nextRevision: number
  draft: Specification | null
  /** What the shown revision changes of the one before it; null when there is none before. */
  changes: Change[] | null
}

/**
 * A specification as its page shows it.
 * @param which the revision asked for, or `draft`; the one in force otherwise, or the draft where none was issued
 * @returns null when there is no such specification or revision
 */
export async function loadSpecificationView(
  { desk }: Pick<ReadingDesk, 'desk'>,
  stream: StreamId,
  which?: string,
): Promise<SpecificationView | null> {
  const facts = await desk.factsOf(stream)
  if (!facts) return null
  const { draft, revisions, inForce, nextRevision } = foldSpecification(facts, stream, desk.now(null))
  const names = await loadNames(desk)
  const asked =
    which === 'draft'
      ? null
      : which === undefined || which === ''
        ? (inForce ?? revisions.at(-1) ?? null)
        : (revisions.find((one) => String(one.body.revision) === which) ?? null)
  const body =
    asked?.body.body ?? (which === undefined || which === '' || which === 'draft' ? draft?.body.body : undefined)
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
    byPoint: [...new Set(body.criteria.map((one) => one.point))].sort().map((point) => ({
      point,
      criteria: body.criteria
        .filter((one) => one.point === point)
        .map((one) => ({
          id: one.id,
          clause: one.clause,
          title: one.title,
          limit: limitOfCriterion(one),
          kind: one.rule.kind,
        })),
    })),
    revisions: revisions.map(({ body: one }) => ({
      revision: one.revision,
      issuedOn: one.issuedOn,
      changes: one.changes,
      approvedBy: names[one.approvedBy] ?? one.approvedBy,
      second: one.second ? (names[one.second] ?? one.second) : null,
    })),
    changes: before ? changesOfSpecification(before.body.body, body) : null,
  }
}
