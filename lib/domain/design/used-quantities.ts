import { toNumber } from '../decimal'
import type { RepairState } from '../fold/repair-state'
import { measuredExact } from '../judge/exact-units'
import type { Measured } from '../reading'
import { recordedOf } from './recorded-basis'

/** What was mixed of one part, over all attempts: mixes that were not weighed are counted apart and are in no sum. */
export type UsedPart = { massG: number; mixes: number; unweighed: number; scrappedG: number }

export type UsedQuantities = {
  fillerA: UsedPart
  fillerB: UsedPart
  resinA: UsedPart
  resinB: UsedPart
  puttyMm3: number | null
  bandMm: number | null
  rolls: number
  plies: number
  attempts: number
}

/** What the governing records of a repair say was used, failed and scrapped attempts included. Nothing recorded is null or none, never a zero amount. */
export function usedQuantities(state: RepairState): UsedQuantities {
  const filler = recordedOf(state, 'filler-mix').map((one) => one.record)
  const resin = recordedOf(state, 'resin-mix').map((one) => one.record)
  const plugs = recordedOf(state, 'arrest').flatMap(({ record }) =>
    record.arrest.method === 'plug, plate and band' ? [record.arrest] : [],
  )
  const wraps = [
    ...recordedOf(state, 'resin-mix'),
    ...recordedOf(state, 'tape-roll'),
    ...recordedOf(state, 'filler-mix'),
  ]
  return {
    fillerA: partOf(filler, 'partA'),
    fillerB: partOf(filler, 'partB'),
    resinA: partOf(resin, 'partA'),
    resinB: partOf(resin, 'partB'),
    puttyMm3: sumIn(
      plugs.map((one) => one.puttyUsed),
      'mm3',
    ),
    bandMm: sumIn(
      plugs.map((one) => one.bandCut),
      'mm',
    ),
    rolls: recordedOf(state, 'tape-roll').length,
    plies: recordedOf(state, 'ply').length,
    attempts: Math.max(1, ...wraps.map((one) => one.attempt.attempt)),
  }
}

type MixLike = {
  partA: readonly { amount?: Measured | undefined }[]
  partB: readonly { amount?: Measured | undefined }[]
  scrapped?: string | undefined
}

function partOf(mixes: readonly MixLike[], part: 'partA' | 'partB'): UsedPart {
  const masses = mixes.map((mix) => {
    const amounts = mix[part].map((one) => measuredExact(one.amount, 'g'))
    const known = amounts.flatMap((one) => (one ? [toNumber(one)] : []))
    const isWeighed = amounts.length > 0 && known.length === amounts.length
    return {
      massG: isWeighed ? known.reduce((sum, one) => sum + one, 0) : null,
      isScrapped: mix.scrapped !== undefined,
    }
  })
  const sum = (list: typeof masses): number => list.reduce((total, one) => total + (one.massG ?? 0), 0)
  return {
    massG: sum(masses),
    mixes: masses.length,
    unweighed: masses.filter((one) => one.massG === null).length,
    scrappedG: sum(masses.filter((one) => one.isScrapped)),
  }
}

function sumIn(values: readonly Measured[], unit: 'mm' | 'mm3'): number | null {
  const known = values.flatMap((one) => {
    const exact = measuredExact(one, unit)
    return exact ? [toNumber(exact)] : []
  })
  return known.length === 0 ? null : known.reduce((total, one) => total + one, 0)
}
