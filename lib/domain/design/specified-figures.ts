import { toNumber } from '../decimal'
import type { RepairState } from '../fold/repair-state'
import type { RecordType } from '../records/record'
import type { Criterion } from '../specification'
import type { DesignFigure } from './design-figure'

/** The amount of putty against the hole that the specification asks for; not known where it has no such criterion. */
export function timesHole(state: RepairState): DesignFigure {
  const criterion = state.specification?.body.criteria.find((one) => one.rule.kind === 'plug-amount')
  const value = criterion?.rule.kind === 'plug-amount' ? toNumber(criterion.rule.timesHoleVolume) : null
  return specified(state, 'q', 'putty against the volume of the hole', criterion, value)
}

/** Part B to 100 of part A of the mixes that a point of the plan records; not known where the specification has no ratio for it. */
export function mixRatio(state: RepairState, type: RecordType, symbol: string, label: string): DesignFigure {
  const points = state.points
    .filter((point) => point.plan.records.some((one) => one.type === type))
    .map((point) => point.no)
  const criterion = state.specification?.body.criteria.find(
    (one) => one.rule.kind === 'ratio' && points.includes(one.point),
  )
  const value = criterion?.rule.kind === 'ratio' ? toNumber(criterion.rule.partBPer100) : null
  return specified(state, symbol, label, criterion, value)
}

function specified(
  { specification }: RepairState,
  symbol: string,
  label: string,
  criterion: Criterion | undefined,
  value: number | null,
): DesignFigure {
  return {
    symbol,
    label,
    unit: '',
    value,
    shown: value === null ? null : String(value),
    note: null,
    from:
      criterion && specification
        ? { kind: 'specification', clause: criterion.clause, revision: specification.revision }
        : null,
  }
}
