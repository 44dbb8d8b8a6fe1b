'use client'
import { useState } from 'react'
import { RefusalNote } from '@/app/_ui/refusal-note'
import { answerNoticeAction } from '@/app/(work)/actions/repair-actions'
import { parseDecimal } from '@/lib/domain/decimal'
import { useAct } from './act-note'

const OUTCOMES = ['attended', 'not attended, proceeded', 'postponed'] as const

/** What came of a notice. Silence never waives a hold; at a witness point the work may go on after the wait. */
export function AnswerNotice({ stream, notice }: { stream: string; notice: string }) {
  const { run, refusal, isBusy } = useAct()
  const [waited, setWaited] = useState('')
  const [clause, setClause] = useState('')
  const minutes = waited === '' ? null : parseDecimal(waited)
  return (
    <div className="stack tight">
      <div className="fields">
        <label className="field">
          <span className="label">Minutes waited</span>
          <input inputMode="decimal" value={waited} onChange={(event) => setWaited(event.target.value)} />
        </label>
        <label className="field">
          <span className="label">Clause</span>
          <input value={clause} onChange={(event) => setClause(event.target.value)} />
        </label>
      </div>
      <div className="row">
        {OUTCOMES.map((outcome) => (
          <button
            key={outcome}
            type="button"
            className="button plain"
            disabled={isBusy || (outcome === 'not attended, proceeded' && minutes === null)}
            onClick={() =>
              run(() =>
                answerNoticeAction({
                  stream,
                  body: {
                    notice,
                    outcome,
                    ...(minutes ? { waitedMinutes: minutes } : {}),
                    ...(clause.trim() ? { clause: clause.trim() } : {}),
                  },
                }),
              )
            }
          >
            {outcome}
          </button>
        ))}
      </div>
      {refusal ? <RefusalNote refusal={refusal} /> : null}
    </div>
  )
}
