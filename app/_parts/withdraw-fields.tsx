'use client'
import { type ReactNode, useState } from 'react'
import { ReasonField } from './reason-field'

/** A release as one is chosen: its fact, and whose and when it is in words. */
export type ReleaseChoice = { id: string; label: string }

/** Withdraw a release with its cause. The release stays in history. */
export function WithdrawFields({
  releases,
  isBusy,
  withdraw,
  children,
}: {
  releases: readonly ReleaseChoice[]
  isBusy: boolean
  withdraw: (body: { release: string; cause: string; reason: string }) => void
  /** What became of it, such as a refusal. */
  children?: ReactNode
}) {
  const [asked, setAsked] = useState('')
  const [cause, setCause] = useState('')
  const [reason, setReason] = useState('')
  const release = releases.find((one) => one.id === asked) ?? releases[0]
  if (!release) return null
  return (
    <details className="sheet">
      <summary className="fold-head">Withdraw a release</summary>
      <div className="stack">
        <label className="field">
          <span className="label">Release</span>
          <select value={release.id} onChange={(event) => setAsked(event.target.value)}>
            {releases.map((one) => (
              <option key={one.id} value={one.id}>
                {one.label}
              </option>
            ))}
          </select>
        </label>
        <label className="field">
          <span className="label">Cause</span>
          <input value={cause} onChange={(event) => setCause(event.target.value)} />
        </label>
        <ReasonField label="Reason" value={reason} change={setReason} />
        {children}
        <button
          type="button"
          className="button stop"
          disabled={isBusy || cause.trim() === '' || reason.trim().length < 3}
          onClick={() => withdraw({ release: release.id, cause: cause.trim(), reason: reason.trim() })}
        >
          Withdraw
        </button>
      </div>
    </details>
  )
}
