'use client'

/** That a draft came back, with the way to begin afresh, and that this device keeps none where it refuses to. */
export function DraftNotes({
  restoredAt,
  isRefused,
  restart,
}: {
  restoredAt: number | null
  isRefused: boolean
  restart: () => void
}) {
  return (
    <>
      {restoredAt !== null ? (
        <div className="note">
          <strong>Your draft is back.</strong>
          <span>
            Kept on this device at{' '}
            {new Date(restoredAt).toLocaleTimeString('en-GB', { hour: '2-digit', minute: '2-digit' })}.
          </span>
          <button type="button" className="button plain" onClick={restart}>
            Start afresh
          </button>
        </div>
      ) : null}
      {isRefused ? (
        <p className="note refused" role="alert">
          <strong>This device refuses to keep drafts.</strong> What you key is lost if the page closes: save often, or
          free some storage.
        </p>
      ) : null}
    </>
  )
}
