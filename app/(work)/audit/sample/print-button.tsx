'use client'

/** Prints the page. */
export function PrintButton() {
  return (
    <button className="button plain no-print" type="button" onClick={() => window.print()}>
      Print
    </button>
  )
}
