'use client'
import { RefusalNote, type ShownRefusal } from '@/app/_ui/refusal-note'
import type { DraftFault } from './use-revision-draft'
import type { Sent } from './use-sending'

/** The end of an editor: what keeps the draft from being saved, and the save itself. */
export function DraftDock({
  state,
  refusal,
  faults,
  where,
}: {
  state: Sent
  refusal: ShownRefusal | null
  faults: readonly DraftFault[]
  where: (path: string) => string
}) {
  return (
    <div className="stack">
      {refusal ? <RefusalNote refusal={refusal} /> : null}
      {faults.length > 0 ? (
        <div className="note refused" role="alert">
          <strong>
            Not saved yet: {faults.length} {faults.length === 1 ? 'part is' : 'parts are'} missing or cannot be read.
          </strong>
          {faults.slice(0, 12).map((fault) => (
            <span key={`${fault.path}${fault.message}`}>
              {where(fault.path)}:{' '}
              {/expected|invalid|required|too small/i.test(fault.message) ? 'missing or not complete' : fault.message}
            </span>
          ))}
        </div>
      ) : null}
      {state === 'kept' ? (
        <p className="note good" role="status">
          <strong>The draft is saved.</strong> <span>It is in force only once it is issued as a revision.</span>
        </p>
      ) : null}
      <div className="row">
        <button type="submit" className="button" disabled={state === 'sending'}>
          {state === 'sending' ? 'Saving' : 'Save the draft'}
        </button>
        <span className="quiet small">A draft may be changed; an issued revision never.</span>
      </div>
    </div>
  )
}
