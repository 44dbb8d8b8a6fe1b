import { type FactId, type PersonId, StreamId } from '@/lib/domain/facts/fact'
import type { Fact } from '@/lib/domain/facts/fact-kinds'
import { factPlace, factWords } from '@/lib/domain/facts/fact-words'
import { LATE_AFTER_MINUTES } from '@/lib/domain/facts/late-after'
import { clockErrors } from '@/lib/domain/fold/clock-errors'
import { isLate } from '@/lib/domain/fold/effective-records'
import type { Remarkable } from '@/lib/domain/fold/remarkable'
import { type Moment, minutesBetween } from '@/lib/domain/time'
import { loadStreams } from '@/lib/server/store/load-stream'
import { lateWords } from './audit-line'
import { mayAudit } from './audit-reach'
import type { ReadingDesk } from './reading-desk'
import { loadRepairView } from './repair-view'

export type TrailLine = {
  id: FactId
  receivedAt: Moment | null
  receivedBy: string | null
  observedAt: Moment
  enteredAt: Moment
  late: string | null
  /** Minutes from entry to receipt where that took longer than an hour: kept on a device out of reach. */
  heldBackMinutes: number | null
  what: string
  where: string
  observedBy: string
  enteredBy: string
  device: string
  /** Known error of the device's clock at the entry, milliseconds; null where none is known. */
  clockErrorMs: number | null
  sha256: string | null
}
/** `isHere`: the fact is one of the trail's own lines, not one of a person, batch or instrument that the repair rests on. */
export type ToldLine = { fact: FactId; at: Moment; text: string; isHere: boolean }
/** What a reader is told without asking, kind by kind; an empty list says that there is none. */
export type ToldGroup = { title: string; none: string; lines: ToldLine[] }
export type TrailView = { lines: TrailLine[]; told: ToldGroup[]; mayAudit: boolean }

/** Every fact of a repair, its nonconformances and its dossier, in order of receipt. Null when it is not there to read. */
export async function loadTrailView(reading: ReadingDesk, number: string): Promise<TrailView | null> {
  const view = await loadRepairView(reading, number)
  if (!view) return null
  const { state, names } = view
  const { store } = reading.desk
  const { tenant } = reading.actor
  const streams = [state.stream, ...state.nonconformances.map((one) => one.stream), StreamId.parse(`dossier:${number}`)]
  const { facts, receipts, sha256Of } = await loadStreams(store, tenant, streams)
  const devices = [...new Set(facts.map((fact) => fact.device.id))].flatMap((id) => {
    const stream = StreamId.safeParse(`device:${id}`)
    return stream.success ? [stream.data] : []
  })
  const errors = clockErrors((await loadStreams(store, tenant, devices)).facts, facts)
  const name = (id: PersonId) => names[id] ?? id
  const lines = facts.map((fact): TrailLine => {
    const receipt = receipts.get(fact.id)
    const heldBack = receipt ? minutesBetween(fact.enteredAt, receipt.receivedAt) : 0
    return {
      id: fact.id,
      receivedAt: receipt?.receivedAt ?? null,
      receivedBy: receipt ? name(receipt.receivedBy) : null,
      observedAt: fact.observedAt,
      enteredAt: fact.enteredAt,
      late: lateWords(fact),
      heldBackMinutes: heldBack > LATE_AFTER_MINUTES ? heldBack : null,
      what: factWords(fact),
      where: factPlace(fact),
      observedBy: name(fact.observedBy),
      enteredBy: name(fact.enteredBy),
      device: fact.device.id,
      clockErrorMs: errors[fact.id] ?? fact.device.clockOffsetMs,
      sha256: sha256Of.get(fact.id) ?? null,
    }
  })
  return {
    lines: lines.sort((a, b) => Date.parse(a.receivedAt ?? a.observedAt) - Date.parse(b.receivedAt ?? b.observedAt)),
    told: toldGroups(state.remarkable, facts, lines),
    mayAudit: mayAudit(reading.desk),
  }
}

/** Late entries, corrections, clock faults, reused photos and the rest, each list there even when it is empty. */
function toldGroups(
  remarkable: readonly Remarkable[],
  facts: readonly Fact[],
  lines: readonly TrailLine[],
): ToldGroup[] {
  const lineOf = new Map(lines.map((line) => [line.id, line]))
  const late = facts.flatMap((fact): ToldLine[] => {
    const line = lineOf.get(fact.id)
    if (!line || (!isLate(fact, LATE_AFTER_MINUTES) && line.heldBackMinutes === null)) return []
    const why = line.late
      ? `keyed ${wait(minutesBetween(fact.observedAt, fact.enteredAt))} after it was observed, by ${line.enteredBy}: ${line.late}`
      : ''
    const held =
      line.heldBackMinutes === null ? '' : `received ${wait(line.heldBackMinutes)} after it was keyed on ${line.device}`
    const text = `${line.what}, ${line.where}: ${[why, held].filter((part) => part !== '').join('; ')}.`
    return [{ fact: fact.id, at: fact.observedAt, text, isHere: true }]
  })
  const take = (title: string, none: string, about: Remarkable['about']): ToldGroup => ({
    title,
    none,
    lines: remarkable
      .filter((one) => one.about === about)
      .map(({ at, fact, text }) => ({ at, fact, text, isHere: lineOf.has(fact) })),
  })
  return [
    {
      title: 'Late entries',
      none: 'Nothing was keyed more than an hour after it was observed, or received more than an hour after it was keyed.',
      lines: late.sort((a, b) => Date.parse(a.at) - Date.parse(b.at)),
    },
    take('Corrections', 'No entry was corrected.', 'correction'),
    take('Transcriptions from paper, and their checks', 'Nothing was copied from paper.', 'copy from paper'),
    take('Clock faults', 'No device or camera is known to have had a wrong clock.', 'clock'),
    take(
      'Reused photos, and photos without their original claims',
      'No photo was used twice or lacks its claims.',
      'photo',
    ),
    take('Refusals, falls, waivers, events and conflicts', 'None.', 'other'),
  ]
}

/** A time span in words: `3 h 12 min`. */
function wait(minutes: number): string {
  const whole = Math.round(minutes)
  const days = Math.floor(whole / 1440)
  const hours = Math.floor((whole % 1440) / 60)
  return [days > 0 ? `${days} d` : '', hours > 0 ? `${hours} h` : '', days > 0 ? '' : `${whole % 60} min`]
    .filter((part) => part !== '')
    .join(' ')
}
