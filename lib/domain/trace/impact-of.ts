import type { StreamId } from '../facts/fact'
import type { Fact, FactOf } from '../facts/fact-kinds'
import { ofKind, ofStream, orderFacts } from '../fold/order-facts'
import type { Use } from '../fold/repair-state'
import type { PointNo } from '../specification'
import { instantOf, type Moment } from '../time'
import { isRealUse, type MassBalance, type RepairIdentity, rowsOf, type TraceRow, traceBatch } from './trace-batch'
import { isWithin, type Period } from './trace-instrument'

export type ImpactCause =
  | FactOf<'batch-recalled'>
  | FactOf<'batch-quarantined'>
  | FactOf<'found-wrong'>
  | FactOf<'qualification-recorded'>
export type ImpactTouch = {
  repair: StreamId
  number: string
  line: string
  status: TraceRow['status']
  point: PointNo
  attempt: number
  rows: TraceRow[]
}
/**
 * What a later-found fault reaches: attempts that relied on it, superseded ones included, and what is left in store. `since` is where the search
 * begins; null is "from the first use", because no earlier good check is known.
 */
export type Impact = {
  cause: ImpactCause
  of: StreamId
  since: Moment | null
  until: Moment
  touched: ImpactTouch[]
  inStore: MassBalance | null
}

/**
 * Search the impact of a recall, of an instrument found wrong, or of a corrected qualification, over the uses of all repairs. An instrument is
 * searched from its last known good full check, never from the end of its certificate.
 */
export function impactOf(
  cause: ImpactCause,
  facts: readonly Fact[],
  uses: readonly Use[],
  repairs: readonly RepairIdentity[],
  asOf: Moment,
): Impact {
  const of = cause.stream
  const period = periodOf(cause, ofStream(orderFacts(facts, asOf), of), asOf)
  const rows = rowsOf(of, uses, repairs, asOf).filter((row) => isRealUse(row) && isWithin(row.at, period))
  const touched = new Map<string, ImpactTouch>()
  for (const row of rows) {
    const key = `${row.repair} ${row.point} ${row.attempt}`
    const known = touched.get(key)
    if (known) known.rows.push(row)
    else
      touched.set(key, {
        repair: row.repair,
        number: row.number,
        line: row.line,
        status: row.status,
        point: row.point,
        attempt: row.attempt,
        rows: [row],
      })
  }
  return {
    cause,
    of,
    since: period.from,
    until: period.to ?? asOf,
    touched: [...touched.values()].sort((a, b) =>
      a.number < b.number
        ? -1
        : a.number > b.number
          ? 1
          : a.point < b.point
            ? -1
            : a.point > b.point
              ? 1
              : a.attempt - b.attempt,
    ),
    inStore: of.startsWith('batch:') ? (traceBatch(facts, of, uses, repairs, asOf)?.balance ?? null) : null,
  }
}

function periodOf(cause: ImpactCause, own: readonly Fact[], asOf: Moment): Period {
  if (cause.kind !== 'found-wrong') return { from: null, to: asOf }
  const checks = ofKind(own, 'check-made')
  const named = checks.find((one) => one.id === cause.body.lastGoodFullCheck)
  const lastGood =
    named ??
    checks.findLast(
      (one) =>
        one.body.coverage === 'full scale' &&
        one.body.result === 'within' &&
        instantOf(one.observedAt) < instantOf(cause.observedAt),
    )
  return { from: lastGood?.observedAt ?? null, to: cause.observedAt }
}
