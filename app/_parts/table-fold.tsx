import type { ReactNode } from 'react'

/** The figures of a picture as a table, for who cannot see the picture. */
export function TableFold({ children }: { children: ReactNode }) {
  return (
    <details>
      <summary className="fold-head plain quiet small">The same as a table</summary>
      <div className="scroll-x">{children}</div>
    </details>
  )
}
