'use client'
import { type ReactNode, useState } from 'react'
import { ReasonField } from './reason-field'

/** What an opened attempt says, as the body of its fact. */
export type AttemptAsked = { points: string[]; attempt: number; reason: string; nonconformance?: string }
/** Points that may be done again with it, and open nonconformances that it may follow from. */
export type AttemptGround = {
  point: string
  attempt: number
  others: readonly { no: string; title: string }[]
  nonconformances: readonly { stream: string; number: string }[]
}

/** Open a new attempt; the failed one stays beside it. A re-test covers the full grid. `barred` draws why the chosen points cannot be opened, null where they can. */
export function AttemptFields({
  ground: { point, attempt, others, nonconformances },
  isBusy,
  open,
  barred = () => null,
  children,
}: {
  ground: AttemptGround
  isBusy: boolean
  open: (asked: AttemptAsked) => void
  barred?: (points: string[]) => ReactNode
  /** What became of it, such as a refusal. */
  children?: ReactNode
}) {
  const [also, setAlso] = useState<readonly string[]>([])
  const [reason, setReason] = useState('')
  const [cause, setCause] = useState('')
  const points = [point, ...also].sort()
  const bar = barred(points)
  return (
    <details className="sheet">
      <summary className="fold-head">Open attempt {attempt}</summary>
      <div className="stack">
        <p className="quiet">
          Attempt {attempt - 1} stays as it is, beside the new one. A re-test covers the full grid.
        </p>
        {others.length > 0 ? (
          <fieldset className="field">
            <legend className="label">Points to do again with it</legend>
            <div className="choice">
              {others.map((one) => (
                <label key={one.no}>
                  <input
                    type="checkbox"
                    checked={also.includes(one.no)}
                    onChange={(event) =>
                      setAlso(event.target.checked ? [...also, one.no] : also.filter((no) => no !== one.no))
                    }
                  />
                  {one.no} {one.title}
                </label>
              ))}
            </div>
          </fieldset>
        ) : null}
        {nonconformances.length > 0 ? (
          <label className="field">
            <span className="label">From nonconformance</span>
            <select value={cause} onChange={(event) => setCause(event.target.value)}>
              <option value="">None</option>
              {nonconformances.map((one) => (
                <option key={one.stream} value={one.stream}>
                  {one.number}
                </option>
              ))}
            </select>
          </label>
        ) : null}
        <ReasonField label="Reason of the new attempt" value={reason} change={setReason} />
        {bar}
        {children}
        <button
          type="button"
          className="button"
          disabled={isBusy || bar !== null || reason.trim().length < 3}
          onClick={() => open({ points, attempt, reason: reason.trim(), ...(cause ? { nonconformance: cause } : {}) })}
        >
          Open attempt {attempt}
        </button>
      </div>
    </details>
  )
}
