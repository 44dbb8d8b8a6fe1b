'use client'
import { Glyph } from '@/app/_ui/glyph'
import type { WindowState } from '@/lib/domain/fold/repair-state'
import { showClock } from '@/lib/domain/time'
import { useStoreNow } from './use-store-now'

/** A running window counting down by the clock, from observed times. */
export function WindowLine({ window, nowMs }: { window: WindowState; nowMs: number }) {
  const now = useStoreNow(nowMs)
  const leftMinutes = window.endsAt ? Math.floor((Date.parse(window.endsAt) - now) / 60_000) : null
  return (
    <p className={`mark running ${window.state === 'warning' ? 'not-proven' : 'plain-state'}`}>
      <Glyph name="lapsed" />
      {window.title}:{' '}
      {leftMinutes === null
        ? 'running'
        : leftMinutes < 0
          ? `ended ${showClock(window.endsAt ?? '')}`
          : `${Math.floor(leftMinutes / 60)} h ${leftMinutes % 60} min left, ends ${showClock(window.endsAt ?? '')}`}
    </p>
  )
}
