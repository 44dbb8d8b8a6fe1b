'use client'
import { memo } from 'react'

/** One mark of the grid, drawn anew only when it shows something else. */
export const MarkCell = memo(function MarkCell({
  mark,
  className,
  isCurrent,
  label,
  shown,
  cells,
  go,
}: {
  mark: string
  className: string
  isCurrent: boolean
  label: string
  /** What stands in it; null where it shows its own name. */
  shown: string | null
  cells: Map<string, HTMLButtonElement>
  go: (mark: string) => void
}) {
  return (
    <button
      type="button"
      ref={(node) => {
        if (node) cells.set(mark, node)
        else cells.delete(mark)
      }}
      className={className}
      aria-current={isCurrent}
      aria-label={label}
      onClick={() => go(mark)}
      onFocus={() => (isCurrent ? undefined : go(mark))}
    >
      {shown ?? <small className="quiet">{mark}</small>}
    </button>
  )
})
