'use client'
import { useState } from 'react'
import { RefusalNote } from '@/app/_ui/refusal-note'
import { markNotApplicableAction } from '@/app/(work)/actions/point-actions'
import { useAct } from './act-note'
import { ReasonField } from './reason-field'

/** Mark a point not applicable, with the reason: neither blank, nor zero, nor a pass. */
export function NotApplicablePanel({ stream, point, attempt }: { stream: string; point: string; attempt: number }) {
  const { run, refusal, isBusy } = useAct()
  const [reason, setReason] = useState('')
  return (
    <details className="sheet">
      <summary className="fold-head">Mark it not applicable</summary>
      <div className="stack">
        <ReasonField label="Why this point does not apply" value={reason} change={setReason} />
        {refusal ? <RefusalNote refusal={refusal} /> : null}
        <button
          type="button"
          className="button"
          disabled={isBusy || reason.trim().length < 3}
          onClick={() =>
            run(() => markNotApplicableAction({ stream, body: { point, attempt, reason: reason.trim() } }))
          }
        >
          Not applicable
        </button>
      </div>
    </details>
  )
}
