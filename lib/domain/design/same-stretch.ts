import { compareFractions, type Fraction, fractionOf, plusFraction, showFraction, toNumber } from '../decimal'
import type { RepairState, RepairStatus } from '../fold/repair-state'
import { measuredExact, minusFraction } from '../judge/exact-units'

/** Where a repair lies along its line: its stretch from the datum in mm, as far as the design sheet says; otherwise only the defect. */
export type Stretch = { line: string; datum: string; from: Fraction; to: Fraction; by: 'wrap' | 'defect' }

export type Neighbour = {
  number: string
  status: RepairStatus
  datum: string
  kind: 'overlaps' | 'beside' | 'not comparable'
  /** In words: by how much they overlap, how far apart they lie, or why that is not known. */
  text: string
}

const GONE: readonly RepairStatus[] = ['removed', 'abandoned']

/** The stretch of a repair; null when neither a total length nor a defect is recorded. */
export function stretchOf(state: RepairState): Stretch | null {
  const total = measuredExact(state.design?.totalLength, 'mm')
  const length = total ?? measuredExact(state.defect?.defectLength, 'mm')
  if (!length) return null
  const { line, datum, stationFromDatum } = state.opened.body
  const leak = fractionOf(stationFromDatum)
  const half = { numerator: length.numerator, denominator: length.denominator * 2n }
  return { line, datum, from: minusFraction(leak, half), to: plusFraction(leak, half), by: total ? 'wrap' : 'defect' }
}

/**
 * Every other repair that stands on the same line: those whose stretches overlap first. Stations from another datum are not comparable and are said to be
 * so, never taken for clear. Removed and abandoned repairs are left out.
 */
export function sameStretch(own: RepairState, all: readonly RepairState[]): Neighbour[] {
  const mine = stretchOf(own)
  const order: Neighbour['kind'][] = ['overlaps', 'not comparable', 'beside']
  return all
    .filter(
      (one) => one.stream !== own.stream && one.opened.body.line === own.opened.body.line && !GONE.includes(one.status),
    )
    .map((one) => neighbourOf(mine, one))
    .sort((a, b) => order.indexOf(a.kind) - order.indexOf(b.kind) || (a.number < b.number ? -1 : 1))
}

function neighbourOf(mine: Stretch | null, other: RepairState): Neighbour {
  const theirs = stretchOf(other)
  const base = { number: other.number, status: other.status, datum: other.opened.body.datum }
  const unknown = (text: string): Neighbour => ({ ...base, kind: 'not comparable', text })
  if (!mine || !theirs) return unknown('no length is recorded: whether the stretches overlap is not known')
  if (mine.datum !== theirs.datum)
    return unknown(`its station counts from ${theirs.datum}, not from ${mine.datum}: measure the distance on the line`)
  const start = compareFractions(mine.from, theirs.from) > 0 ? mine.from : theirs.from
  const end = compareFractions(mine.to, theirs.to) < 0 ? mine.to : theirs.to
  const shared = minusFraction(end, start)
  const extent = `${showFraction(theirs.from, 0)} to ${showFraction(theirs.to, 0)} mm from ${theirs.datum}`.replaceAll(
    '-',
    '−',
  )
  if (toNumber(shared) > 0)
    return { ...base, kind: 'overlaps', text: `overlaps by ${showFraction(shared, 1)} mm: it lies ${extent}` }
  const apart = { numerator: -shared.numerator, denominator: shared.denominator }
  return { ...base, kind: 'beside', text: `${showFraction(apart, 1)} mm apart: it lies ${extent}` }
}
