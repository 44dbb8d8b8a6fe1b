'use client'
import { useId, useState } from 'react'
import { RefusalNote } from '@/app/_ui/refusal-note'
import { settleConflictAction } from '@/app/(work)/actions/signing-actions'
import { useAct } from './act-note'

/** The ruling about a conflict that a sync noted, with the reason. */
export function SettleForm({
  stream,
  conflict,
  rulings,
}: {
  stream: string
  conflict: string
  rulings: readonly { ruling: 'decision stands' | 'decision falls' | 'seen'; label: string }[]
}) {
  const id = useId()
  const { run, refusal, isBusy } = useAct()
  const [chosen, setChosen] = useState(rulings.length === 1 ? (rulings[0]?.ruling ?? '') : '')
  const [reason, setReason] = useState('')
  return (
    <div className="stack tight">
      {rulings.length > 1 ? (
        <fieldset className="field">
          <legend className="label">Ruling</legend>
          <div className="choice">
            {rulings.map((one) => (
              <label key={one.ruling}>
                <input type="radio" name={id} checked={chosen === one.ruling} onChange={() => setChosen(one.ruling)} />
                {one.label}
              </label>
            ))}
          </div>
        </fieldset>
      ) : null}
      <label className="field">
        <span className="label">Reason</span>
        <textarea value={reason} onChange={(event) => setReason(event.target.value)} />
      </label>
      {refusal ? <RefusalNote refusal={refusal} /> : null}
      <button
        type="button"
        className="button"
        disabled={isBusy || chosen === '' || reason.trim().length < 3}
        onClick={() =>
          run(() => settleConflictAction({ stream, body: { conflict, ruling: chosen, reason: reason.trim() } }))
        }
      >
        {rulings.length === 1 ? (rulings[0]?.label ?? 'Rule') : 'Rule on it'}
      </button>
    </div>
  )
}
