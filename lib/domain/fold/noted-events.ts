import type { FactId, PersonId } from '../facts/fact'
import { EVENT_TEXT, type InvalidatingEvent } from '../plan'
import type { PointRecord } from '../records/record'
import type { Moment } from '../time'
import type { AttemptSlot, PointSlots } from './attempt-slots'
import type { EffectiveRecord } from './effective-records'
import type { Fall } from './fall'
import type { JudgedSlot } from './judge-attempts'
import { ofKind } from './order-facts'
import type { RepairGround } from './repair-ground'
import { latest } from './work-span'

/** An event told or read from a record, before the plan's table says which points it touches. */
export type Noted = {
  event: InvalidatingEvent
  at: Moment
  cause: string
  effect: Fall['effect']
  area: string | null
  by: PersonId | null
  fact: FactId | null
  timed?: boolean
}

/** Events that a person told, and those that the governing records carry: a weep, a drip, a stop, an interrupted cure. */
export function notedEvents(ground: RepairGround): Noted[] {
  const told = ofKind(ground.own, 'event-noted').map(
    (fact): Noted => ({
      event: fact.body.event,
      at: fact.observedAt,
      cause: `${EVENT_TEXT[fact.body.event]}: ${fact.body.remark}`,
      effect: 'lapsed',
      area: fact.body.area ?? null,
      by: fact.observedBy,
      fact: fact.id,
    }),
  )
  return [...told, ...ground.records.filter((one) => one.overruledBy === null).flatMap(recordedEvents)]
}

function recordedEvents(one: EffectiveRecord): Noted[] {
  const note = (event: InvalidatingEvent, at: Moment, cause: string): Noted[] => [
    { event, at, cause, effect: 'lapsed', area: null, by: one.fact.observedBy, fact: one.fact.id },
  ]
  const record: PointRecord = one.record
  const { observedAt } = one.fact
  switch (record.type) {
    case 'weep':
      return note('weep', record.seenAt, `Weep at ${record.place}`)
    case 'arrest-watch':
      return record.dripSeenAt ? note('weep', record.dripSeenAt, 'Drip seen during the leak watch') : []
    case 'filler-cure':
      return record.noWeep === 'no' ? note('weep', record.takenAt, `Weep at ${record.weepAt ?? 'the filler'}`) : []
    case 'pressure-test':
      return record.noLeak === 'no'
        ? note(
            'weep',
            latest(record.readings.map((reading) => reading.at)) ?? observedAt,
            'Leak seen at the pressure test',
          )
        : []
    case 'in-service':
      return record.weep === 'yes'
        ? note('weep', observedAt, 'Weep seen in service')
        : record.impact === 'yes'
          ? note('damage', observedAt, 'Impact damage seen in service')
          : []
    case 'stop':
      return record.what === 'stopped' ? note('stopped', observedAt, `Stopped: ${record.reason}`) : []
    case 'cure':
      return record.interrupted === 'yes' ? note('cure-interrupted', record.endedAt, 'Cure interrupted') : []
    default:
      return []
  }
}

/** A climate record that fails puts the points of the "wet" row in question from its time on. */
export function climateEvents(points: readonly PointSlots[], judged: ReadonlyMap<AttemptSlot, JudgedSlot>): Noted[] {
  return points
    .flatMap((point) => point.attempts)
    .flatMap((slot) => {
      const failing = new Set(
        (judged.get(slot)?.criteria ?? [])
          .filter((one) => one.verdict === 'fail')
          .flatMap((one) => one.findings.flatMap((finding) => finding.facts)),
      )
      return slot.governing.flatMap((one): Noted[] =>
        one.record.type === 'climate' && failing.has(one.fact.id)
          ? [
              {
                event: 'wet',
                at: one.record.takenAt,
                cause: 'Climate out of range',
                effect: 'in question',
                area: null,
                by: one.fact.observedBy,
                fact: one.fact.id,
              },
            ]
          : [],
      )
    })
}
