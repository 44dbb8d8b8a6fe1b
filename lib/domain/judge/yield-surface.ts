import { dewPoint } from '@/lib/calc/dew-point'
import { isRefused } from '@/lib/calc/refusal'
import { type Fraction, fractionOf, toNumber } from '../decimal'
import type { Measured, Reading, Unit } from '../reading'
import { convertExact } from './exact-units'
import { profileReadings, saltReading } from './surface-readings'
import type { DraftOf, YieldBuilder, YieldTable } from './yield-builder'

/** Points 05, 06, 07 and 13: cleanliness, profile, climate, pre-wrap re-check. */
export const SURFACE_YIELDS: YieldTable<'cleanliness' | 'profile' | 'climate' | 'pre-wrap'> = {
  cleanliness(record, into) {
    const source = { instrument: record.instrument, at: record.checkedAt }
    into.readings('salts', record.salts, source)
    for (const one of record.extractions ?? [])
      into.reading('salts', one.mark ?? 'extraction', saltReading(one), source)
    into.reading('dust-class', 'band', record.dustClass, { at: record.checkedAt })
    into.reading('prepared-length', 'left', record.preparedLeft, { at: record.checkedAt })
    into.reading('prepared-length', 'right', record.preparedRight, { at: record.checkedAt })
    into.event('prep-finished', record.finishedAt)
    into.event('cleanliness-checked', record.checkedAt)
    into.flag('oil-free', record.oilFree)
    if (record.flashRust) into.flag('free-of-flash-rust', record.flashRust === 'none' ? 'yes' : 'no')
    into.instrument(record.instrument, 'salts', record.checkedAt)
  },
  profile(record, into) {
    into.readings('profile', profileReadings(record), { instrument: record.instrument, at: record.takenAt })
    into.event('profile-taken', record.takenAt)
    into.instrument(record.instrument, 'profile', record.takenAt)
  },
  climate(record, into) {
    const air = { instrument: record.instrument, at: record.takenAt }
    const steel = { instrument: record.steelInstrument, at: record.takenAt }
    into.reading('air-temp', 'air', record.air, air)
    into.reading('humidity', 'air', record.humidity, air)
    const dew = dewPointOf(record)
    if (dew !== null) into.reading('dew-point', 'air', computed(dew, 'degC'), { at: record.takenAt })
    for (const one of record.steel ?? []) {
      if (!one.reading) continue
      const mark = one.clock ? `${one.clock} o'clock` : 'steel'
      into.reading('steel-temp', mark, one.reading, steel)
      into.reading('dew-margin', mark, marginOf(one.reading, dew), { at: record.takenAt })
    }
    into.event('climate-taken', record.takenAt)
    into.instrument(record.instrument, 'air', record.takenAt)
    into.instrument(record.steelInstrument, 'steel', record.takenAt)
  },
  'pre-wrap'(record, into: YieldBuilder) {
    into.event('pre-wrap-checked', record.checkedAt)
    into.flag('reswept', record.resweptAndWiped)
    into.flag('dry', record.dry)
    into.flag('stations-marked', record.stationsMarked)
    into.flag('free-of-flash-rust', record.freeOfFlashRust)
  },
}

/** A temperature in °C, exact; null when it is no number. */
export function celsiusOf(reading: Reading | Measured | undefined): Fraction | null {
  return reading?.kind === 'number' ? convertExact(fractionOf(reading), reading.unit, 'degC') : null
}

/** Dew point of a climate record in °C; null when air or humidity is missing or the formula refuses them. */
function dewPointOf(record: DraftOf<'climate'>): number | null {
  const air = celsiusOf(record.air)
  if (!air || record.humidity?.kind !== 'number') return null
  const answer = dewPoint({ dryC: toNumber(air), rhPct: toNumber(record.humidity) })
  return isRefused(answer) ? null : answer.dewPointC
}

/** The margin in K; where steel or dew point is no number the margin was not found, which is never a pass. */
function marginOf(steel: Reading, dew: number | null): Reading {
  const celsius = celsiusOf(steel)
  return celsius && dew !== null ? computed(toNumber(celsius) - dew, 'K') : { kind: 'not-inspected' }
}

/** Slack below any instrument's resolution, so that a float a hair under a round figure keeps it. */
const FLOAT_SLACK = 1e-9

/**
 * A computed value as a reading with six places, cut and never rounded up, so that computing does not lift it to a limit.
 * Screens show one place (quantity-names); the comparison uses all six.
 */
function computed(value: number, unit: Unit): Measured {
  const digits = Math.floor((value + FLOAT_SLACK) * 1e6)
  return { kind: 'number', digits, scale: 6, unit, text: (digits / 1e6).toFixed(1) }
}
