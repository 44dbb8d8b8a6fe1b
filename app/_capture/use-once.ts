'use client'
import { useRef } from 'react'

/** Runs an act once: while it runs, and for good when it answers `saved`, another call does nothing. So a second tap within a blink, or while the page already leaves, records nothing twice. */
export function useOnce(): (act: () => Promise<unknown>) => Promise<void> {
  const isTaken = useRef(false)
  const run = useRef(async (act: () => Promise<unknown>) => {
    if (isTaken.current) return
    isTaken.current = true
    try {
      isTaken.current = (await act()) === 'saved'
    } catch (cause) {
      isTaken.current = false
      throw cause
    }
  })
  return run.current
}
