'use client'

export default function WorkError({ error, reset }: { error: Error & { digest?: string }; reset: () => void }) {
  return (
    <main className="page narrow" id="main">
      <div className="note refused" role="alert">
        <strong>This page could not be built.</strong>
        <span>
          The record itself is not touched. Try again; if it stays so, tell your administrator
          {error.digest ? ` this reference: ${error.digest}` : ''}.
        </span>
      </div>
      <p style={{ marginTop: 16 }}>
        <button type="button" className="button" onClick={reset}>
          Try again
        </button>
      </p>
    </main>
  )
}
