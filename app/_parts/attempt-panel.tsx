'use client'
import { useState } from 'react'
import { RefusalNote } from '@/app/_ui/refusal-note'
import { openAttemptAction } from '@/app/(work)/actions/point-actions'
import { useAct } from './act-note'

type Props = {
  stream: string
  point: string
  attempt: number
  others: readonly { no: string; title: string; attempt: number }[]
  nonconformances: readonly { stream: string; number: string }[]
}

/** Open a new attempt; the failed one stays beside it. A re-test covers the full grid. */
export function AttemptPanel({ stream, point, attempt, others, nonconformances }: Props) {
  const { run, refusal, isBusy } = useAct()
  const [also, setAlso] = useState<readonly string[]>([])
  const [reason, setReason] = useState('')
  const [cause, setCause] = useState('')
  const choices = others.filter((one) => one.no !== point && one.attempt === attempt - 1)
  return (
    <details className="sheet">
      <summary className="fold-head">Open attempt {attempt}</summary>
      <div className="stack">
        <p className="quiet">
          Attempt {attempt - 1} stays as it is, beside the new one. A re-test covers the full grid.
        </p>
        {choices.length > 0 ? (
          <fieldset className="field">
            <legend className="label">Points to do again with it</legend>
            <div className="choice">
              {choices.map((one) => (
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
        <label className="field">
          <span className="label">Reason of the new attempt</span>
          <textarea value={reason} onChange={(event) => setReason(event.target.value)} />
        </label>
        {refusal ? <RefusalNote refusal={refusal} /> : null}
        <button
          type="button"
          className="button"
          disabled={isBusy || reason.trim().length < 3}
          onClick={() =>
            run(() =>
              openAttemptAction({
                stream,
                body: {
                  points: [point, ...also].sort(),
                  attempt,
                  reason: reason.trim(),
                  ...(cause ? { nonconformance: cause } : {}),
                },
              }),
            )
          }
        >
          Open attempt {attempt}
        </button>
      </div>
    </details>
  )
}
