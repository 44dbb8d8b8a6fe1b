import type { StreamId } from '../facts/fact'
import type { Fact, FactOf } from '../facts/fact-kinds'
import { instantOf, type Moment } from '../time'
import { ofKind, ofStream, orderFacts } from './order-facts'

type Issued = FactOf<'specification-issued'> | FactOf<'plan-issued'>

/**
 * Instant from which a revision is in force: its issue as observed, or the start of the day that it names where that is later, at the offset of
 * the issue.
 */
export function inForceFrom(issued: Issued): number {
  const offset = issued.observedAt.endsWith('Z') ? 'Z' : issued.observedAt.slice(-6)
  return Math.max(instantOf(issued.observedAt), instantOf(`${issued.body.issuedOn}T00:00:00${offset}`))
}

/** Revisions in the order in which they came into force; a later issue of the same revision number is not taken. */
export function revisionsInOrder<I extends Issued>(issues: readonly I[]): I[] {
  const seen = new Set<number>()
  return [...issues]
    .sort((a, b) => inForceFrom(a) - inForceFrom(b) || a.body.revision - b.body.revision)
    .filter((one) => !seen.has(one.body.revision) && seen.add(one.body.revision))
}

/** The revision in force at a moment, or null before the first. */
export function revisionAt<I extends Issued>(revisions: readonly I[], at: Moment): I | null {
  const instant = instantOf(at)
  return revisions.findLast((one) => inForceFrom(one) <= instant) ?? null
}

export type RevisionsState<D, I> = {
  stream: StreamId
  draft: D | null
  revisions: I[]
  inForce: I | null
  nextRevision: number
}

/** A specification as its stream tells: the draft not yet issued, every revision, and the one in force at `asOf`. */
export function foldSpecification(
  facts: readonly Fact[],
  stream: StreamId,
  asOf: Moment,
): RevisionsState<FactOf<'specification-draft-saved'>, FactOf<'specification-issued'>> {
  const own = ofStream(orderFacts(facts, asOf), stream)
  return foldRevisions(stream, own, ofKind(own, 'specification-draft-saved'), ofKind(own, 'specification-issued'), asOf)
}

/** A plan as its stream tells: the draft not yet issued, every revision, and the one in force at `asOf`. */
export function foldPlan(
  facts: readonly Fact[],
  stream: StreamId,
  asOf: Moment,
): RevisionsState<FactOf<'plan-draft-saved'>, FactOf<'plan-issued'>> {
  const own = ofStream(orderFacts(facts, asOf), stream)
  return foldRevisions(stream, own, ofKind(own, 'plan-draft-saved'), ofKind(own, 'plan-issued'), asOf)
}

function foldRevisions<D extends Fact, I extends Issued>(
  stream: StreamId,
  own: readonly Fact[],
  drafts: D[],
  issues: I[],
  asOf: Moment,
): RevisionsState<D, I> {
  const revisions = revisionsInOrder(issues)
  const draft = drafts.at(-1) ?? null
  const lastIssue = issues.at(-1)
  const isDraftOpen = draft !== null && (!lastIssue || own.indexOf(draft) > own.indexOf(lastIssue))
  const highest = revisions.reduce((top, one) => Math.max(top, one.body.revision), -1)
  return {
    stream,
    draft: isDraftOpen ? draft : null,
    revisions,
    inForce: revisionAt(revisions, asOf),
    nextRevision: highest + 1,
  }
}
