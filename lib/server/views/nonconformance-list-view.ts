import type { StreamId } from '@/lib/domain/facts/fact'
import { foldNonconformance } from '@/lib/domain/fold/fold-nonconformance'
import type { NonconformanceState } from '@/lib/domain/fold/nonconformance-state'
import { type CalendarDay, dayOf, type Moment } from '@/lib/domain/time'
import { loadStreamsOfKind } from '@/lib/server/store/load-facts'
import { loadNames, type ReadingDesk } from './reading-desk'
import { loadRepairStates } from './repair-list-view'

export type NonconformanceRow = {
  stream: StreamId
  number: string
  title: string
  state: NonconformanceState['state']
  isOpen: boolean
  raisedOn: CalendarDay
  raisedBy: string
  repair: string | null
  point: string | null
  disposition: string | null
  waitsFor: string[]
  openActions: number
  lateActions: number
  blocksAcceptance: boolean
}
/** Something remarked and no nonconformance: lighter, and countable. */
export type ObservationRow = { repair: string; point: string; at: Moment; by: string; text: string }
export type NonconformanceList = { rows: NonconformanceRow[]; observations: ObservationRow[]; nextNumber: string }

/** Every nonconformance that the reader may read, open ones first and newest first; observations apart. */
export async function loadNonconformanceList(reading: ReadingDesk): Promise<NonconformanceList> {
  const { desk, actor } = reading
  const { facts } = await loadStreamsOfKind(desk.store, actor.tenant, 'nonconformance')
  const states = await loadRepairStates(reading)
  const readable = new Set<string>(states.map((state) => state.stream))
  const names = await loadNames(desk)
  const today = desk.today(null)
  const all = [...new Set(facts.map((fact) => fact.stream))].flatMap(
    (stream) => foldNonconformance(facts, stream, desk.now(null)) ?? [],
  )
  const rows = all
    .filter((one) => !one.raised.body.repair || readable.has(one.raised.body.repair))
    .map((one): NonconformanceRow => {
      const { body } = one.raised
      const openActions = one.actions.filter((action) => action.done === null)
      return {
        stream: one.stream,
        number: one.number,
        title: body.title,
        state: one.state,
        isOpen: one.isOpen,
        raisedOn: dayOf(one.raised.observedAt),
        raisedBy: names[one.raised.observedBy] ?? one.raised.observedBy,
        repair: body.repair?.slice('repair:'.length) ?? null,
        point: body.point ?? null,
        disposition: one.proposal?.body.disposition ?? null,
        waitsFor: one.needsApproval,
        openActions: openActions.length,
        lateActions: openActions.filter((action) => action.fact.body.dueOn < today).length,
        blocksAcceptance: one.blocksAcceptance,
      }
    })
  const observations = states.flatMap((state) =>
    state.points.flatMap((point) =>
      point.attempts.flatMap((attempt) =>
        attempt.records.flatMap(({ fact, record }): ObservationRow[] =>
          record.type === 'remark'
            ? [
                {
                  repair: state.number,
                  point: point.no,
                  at: fact.observedAt,
                  by: names[fact.observedBy] ?? fact.observedBy,
                  text: record.text,
                },
              ]
            : [],
        ),
      ),
    ),
  )
  return {
    rows: rows.sort((a, b) => Number(b.isOpen) - Number(a.isOpen) || b.number.localeCompare(a.number)),
    observations,
    nextNumber: nextNumberOf(all.map((one) => one.number)),
  }
}

/** The number after the highest of those used, in its own shape; numbers are never used again. */
export function nextNumberOf(numbers: readonly string[]): string {
  const parts = numbers.flatMap((number) => {
    const match = /^(.*?)(\d+)$/.exec(number)
    return match ? [{ head: match[1] ?? '', digits: match[2] ?? '' }] : []
  })
  const highest = parts.toSorted((a, b) => Number(a.digits) - Number(b.digits)).at(-1)
  return highest
    ? `${highest.head}${String(Number(highest.digits) + 1).padStart(highest.digits.length, '0')}`
    : 'NCR-0001'
}
