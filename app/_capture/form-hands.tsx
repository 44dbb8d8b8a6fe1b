'use client'
import type { ReactNode } from 'react'
import { KeyDock } from './key-dock'
import { FailingMarks } from './marks-slot'

/** What the controls of a form share under a hand: the marks found outside their limits, and our own keys at the foot of the screen. */
export function FormHands({
  failing,
  children,
}: {
  failing: ReadonlyMap<string, ReadonlySet<string>>
  children: ReactNode
}) {
  return (
    <FailingMarks value={failing}>
      <KeyDock>{children}</KeyDock>
    </FailingMarks>
  )
}
