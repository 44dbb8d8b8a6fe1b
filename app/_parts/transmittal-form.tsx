'use client'
import { useState } from 'react'
import { readNow } from '@/app/_capture/read-now'
import { RefusalNote } from '@/app/_ui/refusal-note'
import { recordTransmittalAction } from '@/app/(work)/actions/dossier-actions'
import { useAct } from './act-note'

/** Record to whom an issue went, and how. */
export function TransmittalForm({
  stream,
  issue,
  utcOffset,
  clockKind,
}: {
  stream: string
  issue: string
  utcOffset: string
  clockKind: 'real' | 'demo' | 'test'
}) {
  const { run, refusal, isBusy } = useAct()
  const [to, setTo] = useState('')
  const [how, setHow] = useState('')
  return (
    <details>
      <summary className="fold-head plain">Record that it was sent</summary>
      <div className="stack tight">
        <label className="field">
          <span className="label">To</span>
          <input value={to} onChange={(event) => setTo(event.target.value)} />
        </label>
        <label className="field">
          <span className="label">How</span>
          <input value={how} onChange={(event) => setHow(event.target.value)} />
        </label>
        {refusal ? <RefusalNote refusal={refusal} /> : null}
        <button
          type="button"
          className="button plain"
          disabled={isBusy || to.trim() === '' || how.trim() === ''}
          onClick={async () => {
            if (
              await run(async () =>
                recordTransmittalAction({
                  stream,
                  body: { issue, to: to.trim(), how: how.trim(), at: await readNow(utcOffset, clockKind) },
                }),
              )
            ) {
              setTo('')
              setHow('')
            }
          }}
        >
          Record
        </button>
      </div>
    </details>
  )
}
