'use client'
import { useId } from 'react'

export type Earlier = {
  day: string
  clock: string
  reason: string
  source: 'memory' | 'paper tally' | 'instrument store' | 'other'
}
export const NOT_EARLIER: Earlier = { day: '', clock: '', reason: '', source: 'memory' }
const SOURCES = ['memory', 'paper tally', 'instrument store', 'other'] as const

/** For what happened before it is entered: when it was, from what it is entered, and why late. Both times stay. */
export function EarlierFields({
  value,
  change,
  utcOffset,
}: {
  value: Earlier
  change: (next: Earlier) => void
  utcOffset: string
}) {
  const id = useId()
  return (
    <details className="earlier" open={value.day !== '' || undefined}>
      <summary>It happened earlier than now</summary>
      <div className="stack">
        <div className="fields">
          <div className="field">
            <label htmlFor={`${id}-day`}>Day</label>
            <input
              id={`${id}-day`}
              type="date"
              value={value.day}
              onChange={(event) => change({ ...value, day: event.target.value })}
            />
          </div>
          <div className="field">
            <label htmlFor={`${id}-clock`}>Time, UTC {utcOffset}</label>
            <input
              id={`${id}-clock`}
              type="time"
              value={value.clock}
              onChange={(event) => change({ ...value, clock: event.target.value })}
            />
          </div>
          <div className="field">
            <label htmlFor={`${id}-source`}>Entered from</label>
            <select
              id={`${id}-source`}
              value={value.source}
              onChange={(event) =>
                change({ ...value, source: SOURCES.find((one) => one === event.target.value) ?? 'other' })
              }
            >
              {SOURCES.map((source) => (
                <option key={source}>{source}</option>
              ))}
            </select>
          </div>
        </div>
        <div className="field">
          <label htmlFor={`${id}-why`}>Why it is entered late</label>
          <input
            id={`${id}-why`}
            value={value.reason}
            autoComplete="off"
            onChange={(event) => change({ ...value, reason: event.target.value })}
          />
          <span className="hint">More than an hour after the event the entry is marked late, with both times.</span>
        </div>
      </div>
    </details>
  )
}

/** The entry part of a command's input; empty when it happened now. */
export function entryOfEarlier(
  value: Earlier,
  utcOffset: string,
): { observedAt?: string; late?: { reason: string; source: Earlier['source'] } } {
  if (value.day === '' || value.clock === '') return {}
  const reason = value.reason.trim()
  return {
    observedAt: `${value.day}T${value.clock}:00${utcOffset}`,
    ...(reason.length >= 3 ? { late: { reason, source: value.source } } : {}),
  }
}
