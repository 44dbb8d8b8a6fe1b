import type { ReactNode } from 'react'

/** Nothing is here yet: what would be, and what to do. */
export function EmptyNote({ title, children }: { title: string; children?: ReactNode }) {
  return (
    <div className="empty">
      <strong>{title}</strong>
      {children}
    </div>
  )
}
