import { addDays } from '@/lib/domain/fold/calendar'
import { type RegisterRow, registerRowOf } from '@/lib/domain/fold/register-row'
import type { RepairState } from '@/lib/domain/fold/repair-state'
import type { CalendarDay } from '@/lib/domain/time'
import { type Overlap, overlapsOf } from '@/lib/domain/trace/beside-repairs'
import type { ReadingDesk } from './reading-desk'
import { loadRepairStates } from './repair-list-view'

export type Due = 'overdue' | 'life ended' | 'due' | 'later' | 'none'
export type Condition = { text: string; owner: string; dueOn: CalendarDay; isLate: boolean }
export type RegisterLine = RegisterRow & { due: Due; conditions: Condition[]; specification: string | null }
export type RegisterView = { today: CalendarDay; lines: RegisterLine[]; overlaps: Overlap[] }

/** Days ahead at which an inspection shows as due. A reminder on screens: the due day itself never moves. */
const DUE_DAYS = 60
const ORDER: readonly Due[] = ['overdue', 'life ended', 'due', 'later', 'none']

/** The register of repairs that the reader may read: overdue and due first, then by number. */
export async function loadRegisterView(reading: ReadingDesk, names: Record<string, string>): Promise<RegisterView> {
  const today = reading.desk.today(null)
  const states = await loadRepairStates(reading)
  const lines = states.map((state) => lineOf(state, today, names))
  return {
    today,
    lines: lines.sort(
      (a, b) =>
        ORDER.indexOf(a.due) - ORDER.indexOf(b.due) ||
        (a.nextInspectionOn ?? '').localeCompare(b.nextInspectionOn ?? '') ||
        a.number.localeCompare(b.number),
    ),
    overlaps: overlapsOf(lines),
  }
}

function lineOf(state: RepairState, today: CalendarDay, names: Record<string, string>): RegisterLine {
  const row = registerRowOf(state)
  const conditions = (state.acceptance?.openConditions ?? []).map((one) => ({
    text: one.text,
    owner: names[one.owner] ?? one.owner,
    dueOn: one.dueOn,
    isLate: one.dueOn < today,
  }))
  return {
    ...row,
    due: dueOf(row, today),
    conditions,
    specification: state.specification
      ? `${state.specification.body.number} rev ${state.specification.revision}`
      : null,
  }
}

function dueOf(row: RegisterRow, today: CalendarDay): Due {
  if (row.status === 'removed' || row.status === 'abandoned' || row.nextInspectionOn === null) return 'none'
  if (row.nextInspectionOn < today || row.status === 'overdue') return 'overdue'
  if (row.lifeEndsOn !== null && row.lifeEndsOn < today) return 'life ended'
  return row.nextInspectionOn <= addDays(today, DUE_DAYS) ? 'due' : 'later'
}
