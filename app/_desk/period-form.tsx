import { CalendarDay, type Moment } from '@/lib/domain/time'

export type PeriodDays = { from: CalendarDay | null; to: CalendarDay | null }

/** The days that an address asks for; anything that is no day is left open. */
export function periodOf(search: { from?: string; to?: string }): PeriodDays {
  const day = (text: string | undefined) => {
    const parsed = CalendarDay.safeParse(text)
    return parsed.success ? parsed.data : null
  }
  return { from: day(search.from), to: day(search.to) }
}

/** The moments of a period of whole days at an offset, both days included. */
export function momentsOf({ from, to }: PeriodDays, utcOffset: string): { from: Moment | null; to: Moment | null } {
  return { from: from ? `${from}T00:00:00${utcOffset}` : null, to: to ? `${to}T23:59:59${utcOffset}` : null }
}

/** Where a trace over a period is fetched as CSV. */
export function csvHref(kind: 'instrument' | 'person', name: string, period: PeriodDays, utcOffset: string): string {
  const { from, to } = momentsOf(period, utcOffset)
  const query = new URLSearchParams({ ...(from ? { from } : {}), ...(to ? { to } : {}) }).toString()
  return `/api/trace/${kind}/${encodeURIComponent(name)}.csv${query === '' ? '' : `?${query}`}`
}

/** Asks for a period of days; an empty end is open. */
export function PeriodForm({ period }: { period: PeriodDays }) {
  return (
    <form className="filters no-print" method="get" aria-label="Period">
      <div className="field">
        <label htmlFor="from">From</label>
        <input id="from" name="from" type="date" defaultValue={period.from ?? ''} />
      </div>
      <div className="field">
        <label htmlFor="to">To</label>
        <input id="to" name="to" type="date" defaultValue={period.to ?? ''} />
      </div>
      <button className="button plain" type="submit">
        Show
      </button>
    </form>
  )
}
