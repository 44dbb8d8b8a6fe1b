'use client'
import { useState } from 'react'
import { RefusalNote } from '@/app/_ui/refusal-note'
import { judgeLikenessAction, judgePhotoAction } from '@/app/(work)/actions/photo-actions'
import { useAct } from './act-note'

const LIKENESS = ['different pictures', 'same picture, rightly used', 'same picture, wrongly used'] as const

/** An inspector's judgement of a photo: accepted or not, and what a likeness means. A photo that is not accepted stays. */
export function PhotoJudgement({
  repair,
  photo,
  isJudged,
  copies,
}: {
  repair: string
  photo: string
  isJudged: boolean
  copies: readonly string[]
}) {
  const { run, refusal, isBusy } = useAct()
  const [reason, setReason] = useState('')
  const stream = `repair:${repair}`
  const isReady = reason.trim().length >= 3 && !isBusy
  if (isJudged && copies.length === 0) return null
  return (
    <details>
      <summary className="fold-head plain">Judge this photo</summary>
      <div className="stack tight">
        <label className="field">
          Reason
          <input value={reason} onChange={(event) => setReason(event.target.value)} />
        </label>
        {isJudged ? null : (
          <div className="row">
            {(['accepted', 'not accepted'] as const).map((decision) => (
              <button
                key={decision}
                type="button"
                className="button plain"
                disabled={!isReady}
                onClick={() =>
                  run(() => judgePhotoAction({ stream, body: { photo, decision, reason: reason.trim() } }))
                }
              >
                {decision}
              </button>
            ))}
          </div>
        )}
        {copies.map((other) =>
          LIKENESS.map((decision) => (
            <button
              key={`${other}${decision}`}
              type="button"
              className="button plain"
              disabled={!isReady}
              onClick={() =>
                run(() => judgeLikenessAction({ stream, body: { photo, other, decision, reason: reason.trim() } }))
              }
            >
              {decision}
            </button>
          )),
        )}
        {refusal ? <RefusalNote refusal={refusal} /> : null}
      </div>
    </details>
  )
}
