import type { Fraction } from '../decimal'
import type { FactId, StreamId } from '../facts/fact'
import type { Fact, FactOf } from '../facts/fact-kinds'
import { foldBatch } from '../fold/fold-batch'
import { ofKind, ofStream, orderFacts } from '../fold/order-facts'
import type { RepairStatus, Use } from '../fold/repair-state'
import type { BatchState } from '../fold/store-states'
import { instantOf, type Moment } from '../time'
import { amountIn, isZero, minus, showAmount, sumOf } from './exact-amount'

/** What a trace names of a repair. */
export type RepairIdentity = {
  repair: StreamId
  number: string
  line: string
  status: RepairStatus
  registerNo: string | null
}
/** One use with the repair it went into. */
export type TraceRow = Use & { number: string; line: string; status: RepairStatus | null }
/**
 * Received = used + wasted + in store. In store is the last count with what was returned to the store or issued from it since; `returned` is shown
 * for itself. All amounts in the batch's unit, exact text. A gap other than zero is a finding; `not counted` where nobody counted the store;
 * `not weighed` where a use has no amount in the batch's unit.
 */
export type MassBalance = {
  unit: string
  received: string
  used: string
  wasted: string
  returned: string
  inStore: string | null
  gap: string | 'not counted' | 'not weighed'
  isFinding: boolean
  unweighed: FactId[]
}
export type BatchTrace = { batch: BatchState; uses: TraceRow[]; movements: Fact[]; balance: MassBalance | null }

/** Roles under which a batch was looked at and nothing of it used up. */
const LOOKED_AT: ReadonlySet<string> = new Set(['refused', 'taken'])

/** Whether a use takes something of a batch, or relies on a reading of an instrument: looking a package over does neither. */
export function isRealUse(use: Pick<Use, 'role'>): boolean {
  return !LOOKED_AT.has(use.role)
}

/**
 * A batch forward: receipt, movements, every use in every repair and attempt, and the mass balance. Null when the batch was never received.
 * @param uses uses from all repairs, in any order
 */
export function traceBatch(
  facts: readonly Fact[],
  stream: StreamId,
  uses: readonly Use[],
  repairs: readonly RepairIdentity[],
  asOf: Moment,
): BatchTrace | null {
  const batch = foldBatch(facts, stream, asOf)
  if (!batch) return null
  const own = ofStream(orderFacts(facts, asOf), stream)
  const rows = rowsOf(stream, uses, repairs, asOf)
  return { batch, uses: rows, movements: own, balance: balanceOf(batch, own, rows) }
}

/** Uses of one stream with their repairs, by time. */
export function rowsOf(
  of: StreamId,
  uses: readonly Use[],
  repairs: readonly RepairIdentity[],
  asOf: Moment,
): TraceRow[] {
  const known = new Map(repairs.map((one) => [one.repair, one]))
  return uses
    .filter((use) => use.of === of && instantOf(use.at) <= instantOf(asOf))
    .map((use): TraceRow => {
      const repair = known.get(use.repair)
      return {
        ...use,
        number: repair?.number ?? use.repair.slice('repair:'.length),
        line: repair?.line ?? '',
        status: repair?.status ?? null,
      }
    })
    .sort((a, b) => instantOf(a.at) - instantOf(b.at) || (a.fact < b.fact ? -1 : 1))
}

function balanceOf(batch: BatchState, own: readonly Fact[], rows: readonly TraceRow[]): MassBalance | null {
  const received = batch.received.quantity
  if (!received) return null
  const { unit } = received
  const unweighed: FactId[] = []
  const inUnit = (amount: { digits: number; scale: number; unit: string } | undefined, fact: FactId): Fraction[] => {
    const value = amount ? amountIn(amount, unit) : null
    if (!value) unweighed.push(fact)
    return value ? [value] : []
  }
  const moved = (kind: 'batch-wasted' | 'batch-returned') =>
    sumOf(ofKind(own, kind).flatMap((fact: FactOf<typeof kind>) => inUnit(fact.body.quantity, fact.id)))
  const usedRows = rows.filter((row) => isRealUse(row) && row.overruled !== true)
  const used = sumOf(usedRows.flatMap((row) => inUnit(row.amount, row.fact)))
  const wasted = moved('batch-wasted')
  const counted = ofKind(own, 'batch-counted').at(-1)
  const inStore = counted ? inStoreSince(counted, own, unit) : null
  const start = amountIn(received, unit)
  const shown = {
    unit,
    received: start ? showAmount(start, unit) : '',
    used: showAmount(used, unit),
    wasted: showAmount(wasted, unit),
    returned: showAmount(moved('batch-returned'), unit),
    unweighed,
  }
  if (!start || !inStore) return { ...shown, inStore: null, gap: 'not counted', isFinding: false }
  if (unweighed.length > 0) return { ...shown, inStore: showAmount(inStore, unit), gap: 'not weighed', isFinding: true }
  const gap = minus(start, sumOf([used, wasted, inStore]))
  return { ...shown, inStore: showAmount(inStore, unit), gap: showAmount(gap, unit), isFinding: !isZero(gap) }
}

/** The last count, with returns to the store added and issues taken off that were observed after it; null where a unit is of another kind. */
function inStoreSince(counted: FactOf<'batch-counted'>, own: readonly Fact[], unit: string): Fraction | null {
  const at = instantOf(counted.observedAt)
  const later = own.filter((fact) => instantOf(fact.observedAt) > at)
  const start = amountIn(counted.body.quantity, unit)
  const back = ofKind(later, 'batch-returned').map((fact) => amountIn(fact.body.quantity, unit))
  const out = ofKind(later, 'batch-issued').map((fact) => amountIn(fact.body.quantity, unit))
  const known = (list: (Fraction | null)[]) => list.filter((one) => one !== null)
  return start && known(back).length === back.length && known(out).length === out.length
    ? minus(sumOf([start, ...known(back)]), sumOf(known(out)))
    : null
}
