import type { FactId, StreamId } from '../facts/fact'
import type { Fact, FactOf } from '../facts/fact-kinds'
import { instantOf } from '../time'
import { ofKind } from './order-facts'
import type { RepairGround } from './repair-ground'
import type { IssueState, Use } from './repair-state'

/** Issued dossiers of the repair, by revision, with who received each. */
export function dossierIssues(ground: RepairGround): IssueState[] {
  const transmittals = ofKind(ground.facts, 'transmitted')
  return ofKind(ground.facts, 'dossier-issued')
    .filter((fact) => fact.body.repair === ground.stream)
    .sort((a, b) => a.body.revision - b.body.revision)
    .map((fact) => ({ fact, transmitted: transmittals.filter((one) => one.body.issue === fact.id) }))
}

/** Kinds of a cited stream that change what a dossier says of work already done. */
const CHANGING: ReadonlySet<Fact['kind']> = new Set([
  'batch-recalled',
  'batch-quarantined',
  'maker-letter',
  'found-wrong',
  'instrument-quarantined',
  'quarantine-lifted',
])

/**
 * Facts that the last issued dossier does not show: of the repair and its nonconformances, and changes in the streams of what was used. The
 * handover hands that issue over, so its own point does not make it out of date. A corrected qualification counts when it put a result in doubt.
 * @param doubts facts that put a result of this repair in question
 */
export function factsAfterIssue(
  ground: RepairGround,
  issues: readonly IssueState[],
  uses: readonly Use[],
  doubts: ReadonlySet<FactId>,
): Fact[] {
  const last = issues.at(-1)
  if (!last) return []
  const handover = new Set(
    ground.plans.flatMap((plan) =>
      plan.body.body.points
        .filter((point) => point.records.some((one) => one.type === 'handover'))
        .map((point) => point.no),
    ),
  )
  const ncrs = new Set(ground.nonconformances.map((one) => one.stream))
  const used = new Set<StreamId>(uses.map((one) => one.of))
  return ground.facts.filter((fact) => {
    if (!isAfterIssue(ground, fact, last.fact)) return false
    if (fact.stream === ground.stream)
      return !(
        'point' in fact.body &&
        fact.kind !== 'nonconformance-raised' &&
        fact.body.point !== undefined &&
        handover.has(fact.body.point)
      )
    if (ncrs.has(fact.stream)) return true
    if (!used.has(fact.stream)) return false
    return CHANGING.has(fact.kind) || (fact.kind === 'qualification-recorded' && doubts.has(fact.id))
  })
}

function isAfterIssue(ground: RepairGround, fact: Fact, issue: FactOf<'dossier-issued'>): boolean {
  const until = instantOf(issue.body.asOf)
  const receivedAt = ground.beside.receipts?.[fact.id]?.receivedAt
  return (
    instantOf(fact.observedAt) > until ||
    instantOf(fact.enteredAt) > until ||
    (receivedAt !== undefined && instantOf(receivedAt) > until)
  )
}
