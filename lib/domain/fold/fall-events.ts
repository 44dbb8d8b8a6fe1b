import type { FactId, PersonId } from '../facts/fact'
import { frameOf } from '../judge/frame'
import type { JudgeContext } from '../judge/judge-context'
import { windowSpan } from '../judge/window-span'
import type { InvalidatingEvent } from '../plan'
import type { PointRecord } from '../records/record'
import type { PointNo } from '../specification'
import { instantOf, type Moment } from '../time'
import type { AttemptSlot, PointSlots } from './attempt-slots'
import type { EffectiveRecord } from './effective-records'
import { revisionAt } from './fold-revisions'
import type { JudgedSlot } from './judge-attempts'
import { ofKind } from './order-facts'
import type { RepairGround } from './repair-ground'
import type { WindowState } from './repair-state'
import { latest } from './work-span'

/** Something that makes releases of one point fall, whatever the release. `timed` falls come from a clock running out. */
export type Fall = {
  no: PointNo
  at: Moment
  cause: string
  effect: 'lapsed' | 'in question'
  event: InvalidatingEvent | null
  timed: boolean
  area: string | null
  by: PersonId | null
  fact: FactId | null
}

type Noted = {
  event: InvalidatingEvent
  at: Moment
  cause: string
  effect: Fall['effect']
  area: string | null
  by: PersonId | null
  fact: FactId | null
  timed?: boolean
}

/** Everything that makes releases fall: noted and recorded events by the plan's table, windows and permits that ran out, decisions to redo. */
export function fallEvents(
  ground: RepairGround,
  points: readonly PointSlots[],
  judged: ReadonlyMap<AttemptSlot, JudgedSlot>,
): Fall[] {
  const noted = [...notedEvents(ground), ...climateEvents(points, judged)]
  const byTable = noted.flatMap((one) => tableFalls(ground, one))
  return [...byTable, ...windowFalls(ground, points, judged), ...permitFalls(ground), ...decidedFalls(ground)].sort(
    (a, b) => instantOf(a.at) - instantOf(b.at) || (a.no < b.no ? -1 : a.no > b.no ? 1 : 0),
  )
}

function tableFalls(ground: RepairGround, noted: Noted): Fall[] {
  const table = (revisionAt(ground.plans, noted.at) ?? ground.plans.at(-1))?.body.body.invalidations ?? []
  const falls = new Set(table.filter((row) => row.event === noted.event).flatMap((row) => row.falls))
  return [...falls].map((no) => ({ timed: false, ...noted, no }))
}

function notedEvents(ground: RepairGround): Noted[] {
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

export const EVENT_TEXT: Record<InvalidatingEvent, string> = {
  wet: 'Surface wet or dew margin lost',
  'prep-lapsed': 'Preparation window lapsed',
  weep: 'Weep',
  touched: 'Surface touched',
  'pressure-raised': 'Pressure raised over the stated value',
  'working-time-exceeded': 'Working time exceeded',
  'cure-interrupted': 'Cure interrupted',
  damage: 'Damage',
  stopped: 'Work stopped',
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
function climateEvents(points: readonly PointSlots[], judged: ReadonlyMap<AttemptSlot, JudgedSlot>): Noted[] {
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

function windowFalls(
  ground: RepairGround,
  points: readonly PointSlots[],
  judged: ReadonlyMap<AttemptSlot, JudgedSlot>,
): Fall[] {
  const preparation = points.find((point) => point.plan.records.some((one) => one.type === 'cleanliness'))?.no
  return [...judged.values()].flatMap(({ windows, context }) =>
    windows.flatMap((window): Fall[] => {
      const rule = context?.specification.body.criteria.find((one) => one.id === window.criterion)?.rule
      if (
        !context ||
        window.state !== 'lapsed' ||
        window.endsAt === null ||
        rule?.kind !== 'window' ||
        rule.maxMinutes === undefined
      )
        return []
      const at = spoiledAt(context, window) ?? window.endsAt
      const start = rule.startPoint ?? window.point
      const end = rule.endPoint ?? window.point
      const cause = `${window.title}: window lapsed`
      if (start === end) return []
      if (start === preparation)
        return tableFalls(ground, {
          event: 'prep-lapsed',
          at,
          cause,
          effect: 'lapsed',
          area: null,
          by: null,
          fact: null,
          timed: true,
        })
      return [{ no: start, at, cause, effect: 'lapsed', event: null, timed: true, area: null, by: null, fact: null }]
    }),
  )
}

/** When something ended a window at once, such as rust bloom after preparation; null when it simply ran out. */
function spoiledAt(context: JudgeContext, window: WindowState): Moment | null {
  const criterion = context.specification.body.criteria.find((one) => one.id === window.criterion)
  return criterion?.rule.kind === 'window'
    ? (windowSpan(criterion.rule, { ...frameOf(context), criterion }).spoiledBy?.at ?? null)
    : null
}

function permitFalls(ground: RepairGround): Fall[] {
  return ground.records.flatMap((one): Fall[] =>
    one.record.type === 'permit' && one.overruledBy === null && instantOf(one.record.validTo) < instantOf(ground.asOf)
      ? [
          {
            no: one.point,
            at: one.record.validTo,
            cause: `Permit ${one.record.permitNo} ended`,
            effect: 'lapsed',
            event: null,
            timed: true,
            area: null,
            by: null,
            fact: one.fact.id,
          },
        ]
      : [],
  )
}

function decidedFalls(ground: RepairGround): Fall[] {
  const redo = ofKind(ground.own, 'stands-or-redo').filter((one) => one.body.decision === 'redo')
  const rework = ofKind(ground.own, 'impact-decided').filter((one) => one.body.decision === 'rework')
  const fall = (no: PointNo, fact: { observedAt: Moment; observedBy: PersonId; id: FactId }, cause: string): Fall => ({
    no,
    at: fact.observedAt,
    cause,
    effect: 'lapsed',
    event: null,
    timed: false,
    area: null,
    by: fact.observedBy,
    fact: fact.id,
  })
  return [
    ...redo.map((fact) =>
      fall(fact.body.point, fact, `Redo after revision ${fact.body.revision}: ${fact.body.reason}`),
    ),
    ...rework.flatMap((fact) =>
      fact.body.points.map((at) => fall(at.point, fact, `Rework decided: ${fact.body.reason}`)),
    ),
  ]
}
