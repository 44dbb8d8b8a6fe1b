import { type Fraction, fractionOf } from '../decimal'
import type { Measured } from '../reading'
import { convertExact } from './exact-units'
import { massOf, yieldMix } from './yield-arrest'
import type { YieldTable } from './yield-builder'

/** Points 14 and 15: primer, mixes, plies, tape and cure. */
export const WRAP_YIELDS: YieldTable<
  'primer' | 'resin-mix' | 'ply' | 'ply-count' | 'tape-roll' | 'tape-wrap' | 'cure'
> = {
  primer(record, into) {
    into.event('first-primer', record.brushedAt)
    into.event('first-wrap-resin', record.brushedAt)
    into.batch(record.batch, 'primer', record.brushedAt, 'primer', record.mass)
    into.person(record.brushedBy, 'primer', record.brushedAt)
  },
  'resin-mix'(record, into) {
    into.event('resin-mix-start', record.startedAt, record.mixNo)
    into.event('first-resin', record.startedAt, record.mixNo)
    into.event('first-wrap-resin', record.startedAt, record.mixNo)
    into.event('resin-mix-used', record.usedBy, record.mixNo)
    into.reading('resin-mix-mass', record.mixNo ?? 'mix', massOf(record), {
      instrument: record.scale,
      at: record.startedAt,
    })
    yieldMix(record, into, 'resin')
  },
  ply(record, into) {
    const ply = `ply ${record.plyNo ?? '?'}`
    const source = { at: record.endedAt }
    into.event('first-ply', record.startedAt, ply)
    into.event('last-ply', record.endedAt, ply)
    into.reading('ply-width', ply, record.width, source)
    into.reading('ply-overlap', ply, record.overlap, source)
    into.reading('joint-offset', ply, record.jointOffset, source)
    into.flag('wet-out', record.wetOut)
    into.flag('air-rolled', record.airRolled)
    into.batch(record.fabric, 'fabric', record.startedAt, ply)
    into.person(record.placedBy, 'wrapper', record.startedAt, { into: ply, supervisedBy: record.supervisedBy })
  },
  'ply-count'(record, into) {
    into.reading('plies-counted', record.countedBy ?? 'count', record.plies, { at: record.countedAt })
    into.person(record.countedBy, 'counter', record.countedAt)
  },
  'tape-roll'(record, into) {
    const roll = `roll ${record.rollNo ?? '?'}`
    into.event('soak-start', record.soakStart, roll)
    into.event('first-resin', record.wrapStart, roll)
    into.event('first-wrap-resin', record.soakStart, roll)
    into.event('first-ply', record.wrapStart, roll)
    into.event('last-ply', record.wrapEnd, roll)
    into.reading('soak-seconds', roll, record.soakSeconds, { at: record.soakStart })
    into.reading('soak-water-temp', roll, record.water, { at: record.soakStart })
    into.reading('wrap-surface-temp', roll, record.surface, { instrument: record.instrument, at: record.wrapStart })
    into.flag('sealed-until-use', record.sealedUntilUse)
    into.flag('tension-kept', record.tensionKept)
    into.flag('squeezed', record.squeezed)
    into.flag('no-gap', record.noGap)
    into.flag('roll-used-up', record.usedUp)
    into.batch(
      record.batch,
      'tape',
      record.soakStart,
      roll,
      record.rollNo === undefined ? undefined : { digits: 1, scale: 0, unit: 'rolls' },
    )
    into.instrument(record.instrument, 'surface', record.wrapStart)
    into.person(record.wrappedBy, 'wrapper', record.wrapStart, { into: roll, supervisedBy: record.supervisedBy })
  },
  'tape-wrap'(record, into) {
    record.pitches?.forEach((pitch, index) => {
      into.reading('tape-overlap', `P${index + 1}`, overlapOf(record.tapeWidth, pitch), { at: record.measuredAt })
    })
    if (record.passes !== undefined) {
      into.reading(
        'tape-passes',
        'wrap',
        { kind: 'number', digits: record.passes, scale: 0, unit: 'pcs', text: String(record.passes) },
        { at: record.measuredAt },
      )
    }
    into.reading('tape-start-length', 'start', record.startBeforeLeak, { at: record.measuredAt })
    into.reading('tape-end-length', 'end', record.endAfterLeak, { at: record.measuredAt })
    into.person(record.measuredBy, 'measurer', record.measuredAt)
  },
  cure(record, into) {
    into.event('cure-start', record.startedAt)
    into.event('cure-end', record.endedAt)
    for (const probe of record.probes ?? []) {
      const mark = `${probe.clock ?? '?'} o'clock`
      for (const point of probe.series ?? []) {
        const source = { instrument: record.logger, at: point.at }
        into.reading('cure-surface-temp', mark, point.reading, source)
        into.reading('probe-temp', mark, point.reading, source)
      }
    }
    into.flag('cure-interrupted', record.interrupted)
    into.flag('post-cure', record.postCure)
    into.instrument(record.logger, 'cure', record.startedAt)
  },
}

/** Overlap in % of the tape's width at one pitch, cut to six places; undefined when one is missing or the tapes do not touch. */
function overlapOf(width: Measured | undefined, pitch: Measured | undefined): Measured | undefined {
  if (!width || !pitch) return undefined
  const band = fractionOf(width)
  const step = convertExact(fractionOf(pitch), pitch.unit, width.unit)
  if (!step || band.numerator <= 0n) return undefined
  const digits = Number(shareMissing(step, band))
  return { kind: 'number', digits, scale: 6, unit: '%', text: (digits / 1e6).toFixed(1) }
}

/** (1 - step/band) × 100 in millionths, cut towards minus infinity: exact integers throughout. */
function shareMissing(step: Fraction, band: Fraction): bigint {
  const whole = band.numerator * step.denominator
  const numerator = (whole - step.numerator * band.denominator) * 100_000_000n
  const cut = numerator / whole
  return numerator < 0n && cut * whole !== numerator ? cut - 1n : cut
}
