'use client'
import { useState } from 'react'
import { RefusalNote } from '@/app/_ui/refusal-note'
import type { Result } from '@/lib/domain/result'
import { useAct } from './act-note'

type Act = (input: unknown) => Promise<Result<unknown, { code: string }>>

/** Which record governs, with the reason. */
export function GovernsForm({
  stream,
  point,
  attempt,
  records,
  act,
}: {
  stream: string
  point: string
  attempt: number
  records: readonly { id: string; label: string }[]
  act: Act
}) {
  const { run, refusal, isBusy } = useAct()
  const [chosen, setChosen] = useState('')
  const [reason, setReason] = useState('')
  const isReady = chosen !== '' && reason.trim().length >= 3 && !isBusy
  return (
    <div className="stack tight">
      <div className="choice" role="radiogroup" aria-label="Record that governs">
        {records.map((record) => (
          <label key={record.id}>
            <input
              type="radio"
              name={`governs-${point}`}
              checked={chosen === record.id}
              onChange={() => setChosen(record.id)}
            />
            {record.label}
          </label>
        ))}
      </div>
      <label className="field">
        <span className="label">Reason</span>
        <input value={reason} onChange={(event) => setReason(event.target.value)} />
      </label>
      <button
        type="button"
        className="button"
        disabled={!isReady}
        onClick={() =>
          run(() =>
            act({
              stream,
              body: {
                point,
                attempt,
                record: chosen,
                over: records.filter((one) => one.id !== chosen).map((one) => one.id),
                reason: reason.trim(),
              },
            }),
          )
        }
      >
        Let it govern
      </button>
      {refusal ? <RefusalNote refusal={refusal} /> : null}
    </div>
  )
}
