'use client'
import { useEffect, useRef, useState } from 'react'
import { afterPaint } from './after-paint'

/** Cells of a grid by their mark, for each to put itself into. The focus follows the mark that is keyed, once a key is shown: finding the place for it would hold up the paint. */
export function useFollowedCells(current: string | null): Map<string, HTMLButtonElement> {
  const [cells] = useState(() => new Map<string, HTMLButtonElement>())
  const before = useRef<string | null>(null)
  useEffect(() => {
    const isGoingOn = before.current !== null
    before.current = current
    const cell = current === null ? undefined : cells.get(current)
    if (!cell) return
    const isThere = document.activeElement === cell
    const show = afterPaint(() => {
      const at = document.activeElement
      // who came by Tab is there already, and who went on elsewhere meanwhile is not called back
      if (!isThere && (at === document.body || cell.closest('[data-marks]')?.contains(at)))
        cell.focus({ preventScroll: true })
      // into what the keys leave of the screen, and no further: a pad that moves is keyed amiss
      cell.scrollIntoView({ block: 'nearest' })
    })
    show.ask()
    // keys reach the grid from the mark before as well, but from nowhere else: only a jump within it can wait for the paint
    if (!isGoingOn) show.now()
    return show.cancel
  }, [cells, current])
  return cells
}
