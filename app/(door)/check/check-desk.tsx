'use client'
import { useState } from 'react'
import { AnswerView } from './answer-view'
import { NO_TRUST, type Trust, TrustFields } from './trust-fields'
import { type CheckState, useChecker } from './use-checker'

const GIVEN_WRONG = {
  'key-unreadable': 'The key file holds neither a log key line nor a certificate (PEM or DER).',
  'checkpoint-unreadable': 'What you pasted is no checkpoint.',
  'fingerprint-unreadable': 'A fingerprint is the SHA-256 of a certificate: 64 hex digits, with or without colons.',
} as const

/** Choose a file, say what you trust, read the answer. */
export function CheckDesk() {
  const { isReady, state, check } = useChecker()
  const [file, setFile] = useState<File | null>(null)
  const [trust, setTrust] = useState<Trust>(NO_TRUST)
  const [isOver, setOver] = useState(false)
  const isReading = state.kind === 'reading'
  const begin = async (chosen: File | null | undefined) => {
    if (!chosen || !isReady || isReading) return
    setFile(chosen)
    check({
      file: chosen,
      given: {
        ...(trust.key ? { key: new Uint8Array(await trust.key.arrayBuffer()) } : {}),
        ...(trust.checkpoint.trim() ? { checkpoint: trust.checkpoint } : {}),
        ...(trust.fingerprint.trim() ? { fingerprint: trust.fingerprint } : {}),
      },
    })
  }
  return (
    <>
      <div className="sheet check-choose" data-ready={isReady}>
        <label
          className={`check-drop${isOver ? ' over' : ''}`}
          onDragOver={(event) => {
            event.preventDefault()
            setOver(true)
          }}
          onDragLeave={() => setOver(false)}
          onDrop={(event) => {
            event.preventDefault()
            setOver(false)
            void begin(event.dataTransfer.files[0])
          }}
        >
          <span className="check-drop-title">{file ? file.name : 'Choose a dossier or a log export'}</span>
          <span className="quiet">
            {file
              ? `${sizeText(file.size)}. Choose another at any time.`
              : 'A PDF dossier, or the log of its holder. You can also drop it here.'}
          </span>
          <span className="button check-button" aria-hidden="true">
            {isReady ? 'Choose a file' : 'One moment …'}
          </span>
          <input
            className="visually-hidden"
            type="file"
            disabled={!isReady || isReading}
            onChange={(event) => {
              const [chosen] = event.target.files ?? []
              event.target.value = ''
              void begin(chosen)
            }}
          />
        </label>
        <TrustFields trust={trust} onChange={setTrust} />
        {file && (
          <button type="button" className="button" disabled={isReading} onClick={() => void begin(file)}>
            Check again
          </button>
        )}
      </div>
      <div aria-live="polite">
        <StateView state={state} />
      </div>
    </>
  )
}

function StateView({ state }: { state: CheckState }) {
  switch (state.kind) {
    case 'idle':
      return null
    case 'reading': {
      const percent = state.sizeBytes > 0 ? Math.floor((state.doneBytes / state.sizeBytes) * 100) : 0
      return (
        <p className="check-progress">
          <progress max={100} value={percent} aria-label="How far the file is read" />
          <span>
            {percent < 100
              ? `Reading: ${percent} % of ${sizeText(state.sizeBytes)}`
              : 'Recomputing verdicts from the readings …'}
          </span>
        </p>
      )
    }
    case 'given-refused':
      return (
        <div className="note refused" role="alert">
          {GIVEN_WRONG[state.code]}
        </div>
      )
    case 'failed':
      return (
        <div className="note refused" role="alert">
          The check could not be made. {state.text}
        </div>
      )
    case 'answer':
      return <AnswerView answer={state.answer} />
  }
}

function sizeText(sizeBytes: number): string {
  return sizeBytes < 1_000_000 ? `${Math.ceil(sizeBytes / 1000)} kB` : `${(sizeBytes / 1_000_000).toFixed(1)} MB`
}
