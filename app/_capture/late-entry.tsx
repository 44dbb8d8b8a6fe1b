'use client'

export type LateReason = { reason: string; source: 'memory' | 'paper tally' | 'instrument store' | 'other' }
const SOURCES = ['memory', 'paper tally', 'instrument store', 'other'] as const

/** A late entry is allowed and never disguised: from what, and why. */
export function LateEntry({ value, change }: { value: LateReason; change: (next: LateReason) => void }) {
  return (
    <fieldset className="note warn">
      <legend className="label">Late entry</legend>
      <p>What you observed lies well before now. It is kept with both times and marked as a late entry.</p>
      <div className="choice" role="radiogroup" aria-label="Entered from">
        {SOURCES.map((source) => (
          <label key={source}>
            <input
              type="radio"
              name="late-source"
              checked={value.source === source}
              onChange={() => change({ ...value, source })}
            />
            {source}
          </label>
        ))}
      </div>
      <label className="field">
        <span className="label">Why it is entered late</span>
        <textarea value={value.reason} onChange={(event) => change({ ...value, reason: event.target.value })} />
      </label>
    </fieldset>
  )
}
