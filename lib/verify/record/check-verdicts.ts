import type { FactId, Receipt, Sha256 } from '@/lib/domain/facts/fact'
import type { Fact } from '@/lib/domain/facts/fact-kinds'
import { foldRepair } from '@/lib/domain/fold/fold-repair'
import type { AttemptState, RepairState } from '@/lib/domain/fold/repair-state'
import type { Ledger } from '../ledger'
import { isFoldable } from './foldable'
import type { Manifest } from './manifest-schema'
import type { FactLine } from './read-facts'

/** Folds by the name that a file states; an older one stays here under its own. */
const FOLDS: Readonly<Record<string, typeof foldRepair>> = { 'fold 1': foldRepair }

/** Whether this checker knows the rules that a file states. */
export function isKnownRules(rules: string): boolean {
  return Object.hasOwn(FOLDS, rules)
}

/**
 * Recompute every verdict and every state from the facts alone, at the moment that the file states, and compare with what it lists; count the criteria apart from the fold.
 * Breaks: `fold-failed`, `repair-missing`, `no-criterion`, `criterion-count`, `verdict-differs`, `state-differs`. Unknown rules are left open.
 */
export function checkVerdicts(
  lines: readonly FactLine[],
  manifest: Manifest,
  ledger: Ledger,
): { agreed: number; total: number } {
  const { verdicts, states, rules } = manifest
  if (verdicts.length === 0) ledger.broken('no-criterion', 'manifest.json: verdicts')
  if (!isKnownRules(rules)) {
    ledger.leaveOpen(
      'rules-unknown',
      `The verdicts could not be recomputed: the file states the rules “${rules.slice(0, 60)}”, which this checker does not know.`,
    )
    return { agreed: 0, total: verdicts.length }
  }
  const state = folded(lines, manifest, ledger)
  if (!state) return { agreed: 0, total: verdicts.length }
  const attempts = state.points.flatMap((point) => point.attempts)
  const total = attempts.reduce((sum, attempt) => sum + criteriaCount(state, attempt), 0)
  if (verdicts.length > 0 && (verdicts.length !== total || total === 0))
    ledger.broken('criterion-count', `${verdicts.length} listed, ${total} criteria`)
  const recomputed = new Map(
    attempts.flatMap(({ point, attempt, criteria }) =>
      criteria.map((one) => [`${point}/${attempt} ${one.criterion.id}`, one.verdict] as const),
    ),
  )
  const agreed = compare(
    verdicts.map((one) => [`${one.point}/${one.attempt} ${one.criterion}`, one.verdict] as const),
    recomputed,
    (place) => ledger.broken('verdict-differs', place),
  )
  compare(
    states.map((one) => [`${one.point}/${one.attempt}`, one.state] as const),
    new Map(attempts.map(({ point, attempt, state: name }) => [`${point}/${attempt}`, name])),
    (place) => ledger.broken('state-differs', place),
  )
  return { agreed, total }
}

/** How many of the listed pairs are as recomputed; every difference, on either side, is told with its place. */
function compare(
  listed: readonly (readonly [key: string, value: string])[],
  recomputed: ReadonlyMap<string, string>,
  tell: (place: string) => void,
): number {
  let agreed = 0
  const seen = new Set<string>()
  for (const [key, value] of listed) {
    seen.add(key)
    const own = recomputed.get(key)
    if (own === value) agreed += 1
    else tell(`point ${key}: the file says ${value}, the readings give ${own ?? 'nothing'}`)
  }
  for (const [key, value] of recomputed)
    if (!seen.has(key)) tell(`point ${key}: the file says nothing, the readings give ${value}`)
  return agreed
}

/** Criteria of the revision by which an attempt was judged, counted in the specification itself; none where work was done before any was in force. */
function criteriaCount({ specification, specificationRevisions }: RepairState, attempt: AttemptState): number {
  const revision = attempt.criteria[0]?.revision
  if (revision === undefined && attempt.records.length > 0) return 0
  const body =
    revision === undefined
      ? specification?.body
      : specificationRevisions.find((one) => one.body.revision === revision)?.body.body
  return (body?.criteria ?? []).filter((criterion) => criterion.point === attempt.point).length
}

function folded(lines: readonly FactLine[], manifest: Manifest, ledger: Ledger): RepairState | null {
  const facts: Fact[] = []
  const receipts: Record<FactId, Receipt> = {}
  const digests = new Map<FactId, Sha256>()
  for (const { fact, leaf } of lines) {
    if (!fact) continue
    facts.push(fact)
    const { receivedAt, receivedBy, position, sha256 } = leaf
    receipts[fact.id] = { receivedAt, receivedBy, position }
    digests.set(fact.id, sha256)
  }
  if (!facts.some((fact) => fact.stream === manifest.repair && fact.kind === 'repair-opened')) {
    ledger.broken('repair-missing', manifest.repair)
    return null
  }
  if (!isFoldable(facts, manifest.repair)) {
    if (ledger.breakCount === 0) ledger.unreadable('too-large', `facts of ${manifest.repair}`)
    ledger.broken('too-many-facts', manifest.repair)
    return null
  }
  try {
    return (
      FOLDS[manifest.rules]?.(facts, manifest.repair, manifest.asOf.moment, {
        receipts,
        likeness: manifest.likeness,
        sha256Of: (fact) => digests.get(fact),
      }) ?? null
    )
  } catch (error) {
    // facts from outside may contradict each other in ways that the holder's own path never writes
    ledger.broken('fold-failed', error instanceof Error ? error.message.slice(0, 200) : manifest.repair)
    return null
  }
}
