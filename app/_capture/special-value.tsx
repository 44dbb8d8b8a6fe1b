'use client'
import { useEffect, useRef, useState } from 'react'
import type { Reading } from '@/lib/domain/reading'

const PLAIN: readonly [Reading, string][] = [
  [{ kind: 'through-wall' }, 'Through-wall'],
  [{ kind: 'no-access' }, 'No access'],
  [{ kind: 'not-inspected' }, 'Not inspected'],
]

/** Values that are no number. None of them is zero, blank or pass. */
export function SpecialValue({
  mark,
  choose,
  close,
}: {
  mark: string
  /** Null takes the reading away. */
  choose: (reading: Reading | null) => void
  close: () => void
}) {
  const dialog = useRef<HTMLDialogElement>(null)
  const [reason, setReason] = useState('')
  useEffect(() => {
    dialog.current?.showModal()
  }, [])
  return (
    <dialog ref={dialog} className="sheet" onClose={close} aria-label={`Special value at ${mark}`}>
      <div className="stack">
        <h2>Mark {mark} is</h2>
        {PLAIN.map(([reading, word]) => (
          <button key={word} type="button" className="button plain wide" onClick={() => choose(reading)}>
            {word}
          </button>
        ))}
        <label className="field">
          Not applicable, because
          <input value={reason} onChange={(event) => setReason(event.target.value)} />
        </label>
        <button
          type="button"
          className="button plain wide"
          disabled={reason.trim().length < 3}
          onClick={() => choose({ kind: 'not-applicable', reason: reason.trim() })}
        >
          Not applicable
        </button>
        <button type="button" className="button plain wide" onClick={() => choose(null)}>
          No reading: take it away
        </button>
        <p className="quiet small">Below a limit of detection: key it as &lt; 3. Above the range: &gt; 999.</p>
        <button type="button" className="button wide" onClick={close}>
          Back to the marks
        </button>
      </div>
    </dialog>
  )
}
