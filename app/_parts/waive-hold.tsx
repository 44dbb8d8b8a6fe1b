'use client'
import { useState } from 'react'
import { RefusalNote } from '@/app/_ui/refusal-note'
import { waiveHoldAction } from '@/app/(work)/actions/repair-actions'
import { useAct } from './act-note'
import type { PointChoice } from './send-notice'

/** A named person gives up a hold for one point, in writing, before the step. */
export function WaiveHold({
  stream,
  party,
  by,
  points,
}: {
  stream: string
  party: 'client' | 'engineer'
  by: string
  points: readonly PointChoice[]
}) {
  const { run, refusal, isBusy } = useAct()
  const [point, setPoint] = useState('')
  const [writing, setWriting] = useState('')
  const chosen = points.find((one) => one.no === point)
  if (points.length === 0) return null
  return (
    <section className="sheet">
      <h2>Waive a hold, in writing</h2>
      <div className="stack">
        <label className="field">
          <span className="label">Point</span>
          <select value={point} onChange={(event) => setPoint(event.target.value)}>
            <option value="">Choose</option>
            {points.map((one) => (
              <option key={one.no} value={one.no}>
                {one.no} {one.title}
              </option>
            ))}
          </select>
        </label>
        <label className="field">
          <span className="label">The writing: letter or message, with its date</span>
          <input value={writing} onChange={(event) => setWriting(event.target.value)} />
        </label>
        {refusal ? <RefusalNote refusal={refusal} /> : null}
        <button
          type="button"
          className="button"
          disabled={isBusy || !chosen || writing.trim() === ''}
          onClick={() =>
            run(() =>
              waiveHoldAction({
                stream,
                body: { point, attempt: chosen?.attempt ?? 1, party, by, writing: writing.trim() },
              }),
            )
          }
        >
          Waive this hold
        </button>
      </div>
    </section>
  )
}
