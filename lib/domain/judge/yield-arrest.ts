import type { z } from 'zod'
import type { Decimal } from '../decimal'
import type { Measured, Reading } from '../reading'
import type { PlugPlateBand } from '../records/arrest'
import type { MarkedReading } from '../records/common'
import type { Moment } from '../time'
import { minusDecimal } from './exact-units'
import { type DraftOf, tappedOf, type YieldBuilder, type YieldTable } from './yield-builder'

/** Points 08 to 12: leak arrest and filler. */
export const ARREST_YIELDS: YieldTable<
  'arrest' | 'arrest-watch' | 'filler-mix' | 'filler-thickness' | 'filler-cure' | 'weep'
> = {
  arrest(record, into) {
    into.reading('arrest-pressure', 'arrest', record.pressureThen)
    into.flag('left-inside', record.leftInside)
    const arrest = record.arrest
    if (arrest?.method === 'plug, plate and band') yieldPlug(arrest, into)
    else if (arrest) {
      into.event('arrest-placed', arrest.placedAt)
      into.batch(arrest.batch, 'arrest', arrest.placedAt, 'arrest')
    }
    const at = arrest?.method === 'plug, plate and band' ? arrest.pressedAt : arrest?.placedAt
    into.person(record.placedBy, 'placer', at, { into: 'arrest' })
  },
  'arrest-watch'(record, into) {
    into.reading('watch-pressure', 'watch', record.pressure, { instrument: record.gauge, at: record.startedAt })
    into.event('watch-start', record.startedAt)
    into.event('watch-end', record.endedAt)
    into.event('drip-seen', record.dripSeenAt)
    if (record.dripSeenAt) into.flag('drip-seen', 'yes')
    else if (record.endedAt) into.flag('drip-seen', 'no')
    into.flag('wipe-dry', record.wipeDry)
    into.flag('free-of-flash-rust', record.freeOfFlashRust)
    into.instrument(record.gauge, 'pressure', record.startedAt)
    into.person(record.watchedBy, 'watcher', record.startedAt)
  },
  'filler-mix'(record, into) {
    into.event('filler-mix-start', record.startedAt, record.mixNo)
    into.event('filler-mix-end', record.endedAt, record.mixNo)
    into.event('filler-mix-used', record.usedBy, record.mixNo)
    into.reading('filler-mix-mass', record.mixNo ?? 'mix', massOf(record), {
      instrument: record.scale,
      at: record.startedAt,
    })
    yieldMix(record, into, 'filler')
  },
  'filler-thickness'(record, into) {
    const source = { instrument: record.instrument, at: record.measuredAt }
    const heights: Partial<MarkedReading>[] = [...(record.before ?? []), ...(record.after ?? [])]
    for (const { mark, value } of heightsOf(record)) {
      into.reading(mark === record.holeMark ? 'filler-over-hole' : 'filler-on-ring', mark, value, {
        ...source,
        tapped: tappedOf(heights.filter((one) => one.mark === mark)),
      })
    }
    into.reading('filler-length', 'filler', record.coveredLength)
    into.reading('filler-girth', 'filler', record.coveredGirth)
    into.event('filler-placed', record.placedAt, record.mixNo)
    into.event('filler-measured', record.measuredAt, record.mixNo)
    into.flag('smooth', record.smooth)
    into.instrument(record.instrument, 'filler height', record.measuredAt)
    into.person(record.placedBy, 'placer', record.placedAt, { into: record.mixNo ?? 'filler' })
  },
  'filler-cure'(record, into) {
    into.readings('filler-hardness', record.readings, { instrument: record.instrument, at: record.takenAt })
    into.event('filler-hardness-taken', record.takenAt)
    into.flag('no-weep', record.noWeep)
    into.instrument(record.instrument, 'filler hardness', record.takenAt)
  },
  weep(record, into) {
    into.event('weep-seen', record.seenAt)
  },
}

function yieldPlug(plug: Partial<z.infer<typeof PlugPlateBand>>, into: YieldBuilder): void {
  into.reading('plate-thickness', 'plate', plug.plateThickness)
  into.reading('band-tail', 'band', plug.bandTail)
  into.event('knead-start', plug.kneadStart)
  into.event('knead-end', plug.kneadEnd)
  into.event('plug-pressed', plug.pressedAt)
  into.event('band-tight', plug.bandTightAt)
  into.event('arrest-placed', plug.bandTightAt)
  into.event('plug-judged-hard', plug.judgedHardAt)
  into.flag('one-colour', plug.oneColour)
  into.flag('plug-over-hole', plug.overHole)
  into.flag('surplus-cut', plug.surplusCut)
  into.flag('non-sparking-asked', plug.nonSparkingAsked)
  into.flag('non-sparking-tools', plug.nonSparkingTools)
  into.batch(plug.puttyBatch, 'putty', plug.kneadStart, 'plug', plug.puttyUsed)
  into.batch(plug.bandBatch, 'band', plug.bandTightAt, 'arrest')
}

/** What both kinds of mix yield: temperature, colour, parts, kits and people. */
export function yieldMix(
  mix: DraftOf<'filler-mix'> | DraftOf<'resin-mix'>,
  into: YieldBuilder,
  what: 'filler' | 'resin',
): void {
  const no = mix.mixNo ?? 'mix'
  const at: Moment | undefined = mix.startedAt
  into.reading('resin-temp', no, mix.resinTemp, { at })
  into.flag('colour-uniform', mix.colourUniform)
  const partRole = what === 'filler' ? { a: 'filler A', b: 'filler B' } : { a: 'resin', b: 'hardener' }
  mix.partA?.forEach((part, index) => {
    into.batch(part.batch, partRole.a, at, no, part.amount ?? (index === 0 ? mix.kits : undefined))
  })
  for (const part of mix.partB ?? []) into.batch(part.batch, partRole.b, at, no, part.amount)
  into.instrument(mix.scale, 'mass', at)
  into.person(mix.mixedBy, 'mixer', at, { into: no, supervisedBy: mix.supervisedBy })
  into.person(mix.checkedBy, 'checker', at, { into: no })
}

/** Mass of a mix, A + B, in g; undefined unless every part was weighed. */
export function massOf(mix: DraftOf<'filler-mix'> | DraftOf<'resin-mix'>): Measured | undefined {
  const parts = [...(mix.partA ?? []), ...(mix.partB ?? [])]
  if (
    !mix.partA?.length ||
    !mix.partB?.length ||
    parts.some((part) => part.amount?.unit !== 'g' && part.amount?.unit !== 'kg')
  )
    return undefined
  const sum = parts.reduce<Decimal>(
    (total, { amount }) =>
      amount ? minusDecimal(total, { digits: -gramsOf(amount).digits, scale: gramsOf(amount).scale }) : total,
    { digits: 0, scale: 0 },
  )
  return { kind: 'number', ...sum, unit: 'g', text: String(sum.digits / 10 ** sum.scale).slice(0, 24) }
}

function gramsOf(amount: Measured): Decimal {
  if (amount.unit === 'g') return amount
  return amount.scale >= 3
    ? { digits: amount.digits, scale: amount.scale - 3 }
    : { digits: amount.digits * 10 ** (3 - amount.scale), scale: 0 }
}

/** Height after - before at each mark: exact where both are numbers of one unit, otherwise the statement of the one that is none. */
function heightsOf(record: DraftOf<'filler-thickness'>): { mark: string; value: Reading }[] {
  const before = new Map((record.before ?? []).map((one) => [one.mark, one.reading]))
  const after = new Map((record.after ?? []).map((one: Partial<MarkedReading>) => [one.mark ?? '', one.reading]))
  return [...new Set([...before.keys(), ...after.keys()])].map((mark) => ({
    mark,
    value: differenceOf(before.get(mark), after.get(mark)),
  }))
}

function differenceOf(before: Reading | undefined, after: Reading | undefined): Reading {
  if (before?.kind === 'number' && after?.kind === 'number') {
    if (before.unit !== after.unit) return { kind: 'not-inspected' }
    const value = minusDecimal(after, before)
    return { kind: 'number', ...value, unit: after.unit, text: String(value.digits / 10 ** value.scale).slice(0, 24) }
  }
  const stated = [after, before].find(
    (one) => one && one.kind !== 'number' && one.kind !== 'below' && one.kind !== 'above',
  )
  return stated ?? { kind: 'not-inspected' }
}
