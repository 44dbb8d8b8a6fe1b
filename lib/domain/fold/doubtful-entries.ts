import type { PointRecord } from '../records/record'
import { instantOf } from '../time'
import type { EffectiveRecord } from './effective-records'
import type { Remarkable } from './remarkable'
import type { RepairGround } from './repair-ground'

/** Fewer readings than this may be alike by chance. */
const COPIED_FROM = 6
/** A gauge is not set, read and keyed faster than this at each mark. */
const FASTEST_READING_S = 2

type Grid = readonly { mark: string; at?: string | undefined; reading: object }[]

/** Reading lists of two records that are the same at every mark, digit for digit: shown for a person to ask about, never judged. */
export function copiedReadings(ground: RepairGround): Remarkable[] {
  const seen = new Map<string, EffectiveRecord>()
  return ground.records.flatMap((one): Remarkable[] =>
    gridsOf(one.record).flatMap((grid): Remarkable[] => {
      if (grid.length < COPIED_FROM) return []
      const key = `${one.record.type} ${JSON.stringify(grid.map(({ mark, reading }) => [mark, reading]))}`
      const earlier = seen.get(key)
      if (!earlier) seen.set(key, one)
      return earlier && earlier !== one
        ? [
            {
              at: one.fact.observedAt,
              fact: one.fact.id,
              about: 'other',
              text: `All ${grid.length} readings equal those of point ${earlier.point} attempt ${earlier.attempt}.`,
            },
          ]
        : []
    }),
  )
}

/** Timed readings that came faster than a gauge can be read. */
export function hastyReadings(ground: RepairGround): Remarkable[] {
  return ground.records.flatMap((one): Remarkable[] =>
    gridsOf(one.record).flatMap((grid): Remarkable[] => {
      const times = grid.flatMap(({ at }) => (at ? [instantOf(at)] : [])).sort((a, b) => a - b)
      const first = times[0]
      const last = times.at(-1)
      if (first === undefined || last === undefined || times.length < COPIED_FROM) return []
      const seconds = (last - first) / 1000
      return seconds < (times.length - 1) * FASTEST_READING_S
        ? [
            {
              at: one.fact.observedAt,
              fact: one.fact.id,
              about: 'other',
              text: `${times.length} readings in ${seconds} s.`,
            },
          ]
        : []
    }),
  )
}

function gridsOf(record: PointRecord): Grid[] {
  switch (record.type) {
    case 'hardness':
    case 'thickness':
    case 'profile':
    case 'filler-cure':
      return [record.readings]
    case 'defect':
    case 'removal':
      return [record.wall]
    case 'filler-thickness':
      return [record.before, record.after]
    case 'cleanliness':
      return [record.salts]
    default:
      return []
  }
}
