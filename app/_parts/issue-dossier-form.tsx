'use client'
import { useRouter } from 'next/navigation'
import { useEffect, useState } from 'react'
import { RefusalNote } from '@/app/_ui/refusal-note'
import { issueDossierAction } from '@/app/(work)/actions/dossier-actions'
import { useAct } from './act-note'

type Progress = {
  state: 'waiting' | 'running' | 'done' | 'failed'
  doneCount: number
  totalCount: number | null
  note: string | null
}
const PURPOSES = ['for review by the client', 'for test', 'final'] as const

/** Issue the next revision: its purpose, what changed, and the progress while it builds. */
export function IssueDossierForm({ repair, next }: { repair: string; next: number }) {
  const router = useRouter()
  const { run, refusal, isBusy } = useAct()
  const [purpose, setPurpose] = useState('')
  const [changes, setChanges] = useState('')
  const [key, setKey] = useState<string | null>(null)
  const [progress, setProgress] = useState<Progress | null>(null)
  useEffect(() => {
    if (!key) return
    const ask = setInterval(async () => {
      try {
        const reply = await fetch(`/api/jobs/${encodeURIComponent(key)}`, { cache: 'no-store' })
        const body = (await reply.json()) as { ok?: boolean; value?: Progress } & Partial<Progress>
        const now = body.value ?? (body.state ? (body as Progress) : null)
        setProgress(now)
        if (now?.state === 'done' || now?.state === 'failed') {
          setKey(null)
          router.refresh()
        }
      } catch (cause) {
        if (!(cause instanceof TypeError || cause instanceof SyntaxError)) throw cause
      }
    }, 700)
    return () => clearInterval(ask)
  }, [key, router])
  const issue = () =>
    run(async () => {
      const answer = await issueDossierAction({
        stream: `repair:${repair}`,
        purpose,
        changes: changes
          .split('\n')
          .map((line) => line.trim())
          .filter((line) => line !== ''),
      })
      if (answer.ok) {
        setKey(answer.value.key)
        setProgress({ state: 'waiting', doneCount: 0, totalCount: null, note: null })
      }
      return answer
    })
  const isBuilding = key !== null
  return (
    <section className="sheet">
      <h2>Issue revision {next}</h2>
      <div className="stack">
        <fieldset className="field">
          <legend className="label">Purpose</legend>
          <div className="choice">
            {PURPOSES.map((one) => (
              <label key={one}>
                <input type="radio" name="dossier-purpose" checked={purpose === one} onChange={() => setPurpose(one)} />
                {one}
              </label>
            ))}
          </div>
        </fieldset>
        <label className="field">
          <span className="label">What changed{next === 0 ? ' (first issue: may stay empty)' : ', one line each'}</span>
          <textarea value={changes} onChange={(event) => setChanges(event.target.value)} />
        </label>
        {refusal ? <RefusalNote refusal={refusal} /> : null}
        {progress ? (
          <div
            role="status"
            className={`note ${progress.state === 'failed' ? 'refused' : progress.state === 'done' ? 'good' : ''}`}
          >
            <strong>
              {progress.state === 'waiting'
                ? 'Waiting to be built'
                : progress.state === 'running'
                  ? 'Building'
                  : progress.state === 'done'
                    ? 'Issued'
                    : 'It could not be issued'}
            </strong>
            {progress.totalCount ? (
              <progress
                value={progress.doneCount}
                max={progress.totalCount}
                aria-label="Progress"
                style={{ width: '100%' }}
              />
            ) : null}
            <span>
              {progress.note ?? (progress.totalCount ? `${progress.doneCount} of ${progress.totalCount}` : '')}
            </span>
          </div>
        ) : null}
        <button
          type="button"
          className="button"
          disabled={isBusy || isBuilding || purpose === '' || (next > 0 && changes.trim() === '')}
          onClick={issue}
        >
          Issue rev {next}
        </button>
      </div>
    </section>
  )
}
