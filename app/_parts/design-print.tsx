'use client'

/** Print this page. */
export function PrintButton() {
  return (
    <button type="button" className="button plain no-print" onClick={() => window.print()}>
      Print
    </button>
  )
}
