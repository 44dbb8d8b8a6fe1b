import type { FactId, PersonId } from '../facts/fact'
import { frameOf } from '../judge/frame'
import type { JudgeContext } from '../judge/judge-context'
import { windowSpan } from '../judge/window-span'
import type { PointNo } from '../specification'
import { instantOf, type Moment } from '../time'
import type { AttemptSlot, PointSlots } from './attempt-slots'
import type { Fall } from './fall'
import { revisionAt } from './fold-revisions'
import type { JudgedSlot } from './judge-attempts'
import { climateEvents, type Noted, notedEvents } from './noted-events'
import { ofKind } from './order-facts'
import type { RepairGround } from './repair-ground'
import type { WindowState } from './repair-state'

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
