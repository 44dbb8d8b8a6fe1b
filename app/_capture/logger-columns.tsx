'use client'
import type { LoggerSeries } from '@/lib/capture/logger-series'
import type { ColumnUse } from '@/lib/capture/logger-takeover'
import { showReadingUnit } from '@/lib/domain/reading'
import { showMoment } from '@/lib/domain/time'

const CLOCKS = ['12', '1', '2', '3', '4', '5', '6', '7', '8', '9', '10', '11']

/** Each column of the file with its first and last temperature, and where its probe sat: chosen by the person, never by the column's name. */
export function LoggerColumns({
  series,
  uses,
  change,
}: {
  series: LoggerSeries
  uses: Record<number, ColumnUse>
  change: (next: Record<number, ColumnUse>) => void
}) {
  return (
    <fieldset className="field">
      <legend className="label">Where each probe sat</legend>
      {series.columns.map((column, place) => {
        const [first, last] = [column.points[0], column.points.at(-1)]
        return (
          <label key={column.name} className="field">
            <strong>{column.name}</strong>
            <span className="hint">
              {first && last
                ? `${column.points.length} temperatures, ${showMoment(first.at)} ${showReadingUnit(first.reading)} to ${showMoment(last.at)} ${showReadingUnit(last.reading)}`
                : 'no temperature could be read'}
            </span>
            <select
              value={uses[place] ?? ''}
              disabled={!first}
              aria-label={`Place of ${column.name}`}
              onChange={(event) => change({ ...uses, [place]: event.target.value as ColumnUse })}
            >
              <option value="">Choose</option>
              {CLOCKS.map((clock) => (
                <option key={clock} value={clock}>
                  {clock} o’clock
                </option>
              ))}
              <option value="ambient">ambient, not a probe on the wrap</option>
              <option value="leave out">leave it out</option>
            </select>
          </label>
        )
      })}
    </fieldset>
  )
}
