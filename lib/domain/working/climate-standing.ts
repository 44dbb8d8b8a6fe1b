import { dewPoint } from '@/lib/calc/dew-point'
import { isRefused } from '@/lib/calc/refusal'
import { compareFractions, fractionOf, showDecimal, toNumber } from '../decimal'
import type { AttemptState, RepairState } from '../fold/repair-state'
import { boundsOf } from '../judge/exact-limit'
import { showBeside } from '../judge/show-exact'
import { celsiusOf } from '../judge/yield-surface'
import { showReadingUnit } from '../reading'
import { instantOf, type Moment, momentOf } from '../time'
import { ownRecords } from './working'

/** The latest climate reading of an attempt: dew point and margin at the coldest place, and until when it counts. */
export type ClimateStanding = {
  takenAt: Moment
  coldest: { clock: string; shown: string; margin: string | null } | null
  /** Why there is no dew point, in words; null when there is one. */
  refusal: string | null
  dewPointC: number | null
  /** When its validity ends by the specification, and by which clause; null where the specification states none. */
  endsAt: Moment | null
  validFor: string | null
}

/** Null when no climate was read in the attempt. The shortest validity among the specification's windows from a climate reading counts. */
export function climateStanding(state: RepairState, attempt: AttemptState): ClimateStanding | null {
  const latest = attempt.records
    .flatMap(({ record, overruledBy }) => (record.type === 'climate' && overruledBy === null ? [record] : []))
    .toSorted((a, b) => instantOf(a.takenAt) - instantOf(b.takenAt))
    .at(-1)
  if (!latest) return null
  const air = celsiusOf(latest.air)
  const answer = air
    ? dewPoint({ dryC: toNumber(air), rhPct: toNumber(latest.humidity) })
    : { refused: 'no air temperature' }
  const dewPointC = isRefused(answer) ? null : answer.dewPointC
  const steel = latest.steel.flatMap((one) => {
    const temp = celsiusOf(one.reading)
    return temp ? [{ clock: one.clock, temp, shown: showReadingUnit(one.reading) }] : []
  })
  const cold = steel.toSorted((a, b) => compareFractions(a.temp, b.temp))[0]
  const windows = (state.specification?.body.criteria ?? []).flatMap((criterion) =>
    criterion.rule.kind === 'window' && criterion.rule.start === 'climate-taken' && criterion.rule.maxMinutes
      ? [{ criterion, minutes: criterion.rule.maxMinutes }]
      : [],
  )
  const shortest = windows.toSorted((a, b) => toNumber(a.minutes) - toNumber(b.minutes))[0]
  const offset = latest.takenAt.endsWith('Z') ? 'Z' : latest.takenAt.slice(-6)
  return {
    takenAt: latest.takenAt,
    coldest: cold
      ? { clock: cold.clock, shown: cold.shown, margin: marginShown(attempt, state, latest.takenAt, cold.clock) }
      : null,
    refusal: isRefused(answer) ? answer.refused.replaceAll('_', ' ') : null,
    dewPointC,
    endsAt: shortest
      ? momentOf(instantOf(latest.takenAt) + Math.round(toNumber(shortest.minutes) * 60_000), offset)
      : null,
    validFor: shortest
      ? `${showDecimal(shortest.minutes)} min from the reading, clause ${shortest.criterion.clause}`
      : null,
  }
}

/** The margin as the criterion shows it: one place, never rounded across its limit; null where there is none. */
function marginShown(attempt: AttemptState, state: RepairState, takenAt: Moment, clock: string): string | null {
  const reading = ownRecords(attempt)
    .flatMap((one) => one.yields.readings)
    .find((one) => one.quantity === 'dew-margin' && one.at === takenAt && one.mark === `${clock} o'clock`)?.reading
  if (reading?.kind !== 'number') return null
  const limits = attempt.criteria.flatMap(({ criterion: { rule } }) => {
    if (rule.kind !== 'each' || rule.quantity !== 'dew-margin') return []
    const { min, max } = boundsOf(rule, { design: state.design, defect: state.defect })
    return [min, max].flatMap((one) => (one ? [one.value] : []))
  })
  return showBeside(fractionOf(reading), 1, limits)
}
