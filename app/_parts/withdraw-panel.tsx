'use client'
import { useState } from 'react'
import { RefusalNote } from '@/app/_ui/refusal-note'
import { withdrawReleaseAction } from '@/app/(work)/actions/point-actions'
import { useAct } from './act-note'

/** Withdraw a release with its cause. The release stays in history. */
export function WithdrawPanel({
  stream,
  releases,
}: {
  stream: string
  releases: readonly { id: string; label: string }[]
}) {
  const { run, refusal, isBusy } = useAct()
  const [release, setRelease] = useState(releases[0]?.id ?? '')
  const [cause, setCause] = useState('')
  const [reason, setReason] = useState('')
  return (
    <details className="sheet">
      <summary className="fold-head">Withdraw a release</summary>
      <div className="stack">
        {releases.length > 1 ? (
          <label className="field">
            <span className="label">Release</span>
            <select value={release} onChange={(event) => setRelease(event.target.value)}>
              {releases.map((one) => (
                <option key={one.id} value={one.id}>
                  {one.label}
                </option>
              ))}
            </select>
          </label>
        ) : null}
        <label className="field">
          <span className="label">Cause</span>
          <input value={cause} onChange={(event) => setCause(event.target.value)} />
        </label>
        <label className="field">
          <span className="label">Reason</span>
          <textarea value={reason} onChange={(event) => setReason(event.target.value)} />
        </label>
        {refusal ? <RefusalNote refusal={refusal} /> : null}
        <button
          type="button"
          className="button stop"
          disabled={isBusy || cause.trim() === '' || reason.trim().length < 3}
          onClick={() =>
            run(() => withdrawReleaseAction({ stream, body: { release, cause: cause.trim(), reason: reason.trim() } }))
          }
        >
          Withdraw
        </button>
      </div>
    </details>
  )
}
