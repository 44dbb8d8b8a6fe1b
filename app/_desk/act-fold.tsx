import type { ReactNode } from 'react'

/** One act that may be done here, folded until it is wanted. */
export function ActFold({
  title,
  note,
  open = false,
  children,
}: {
  title: string
  note?: string
  open?: boolean
  children: ReactNode
}) {
  return (
    <details className="act" open={open || undefined}>
      <summary>
        <span>{title}</span>
        {note ? <span className="quiet small">{note}</span> : null}
      </summary>
      <div className="act-body">{children}</div>
    </details>
  )
}
