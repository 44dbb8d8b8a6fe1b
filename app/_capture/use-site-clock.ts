'use client'
import { useEffect, useState } from 'react'
import { instantOf } from '@/lib/domain/time'
import type { CaptureContext } from './capture-context'
import { readNow } from './read-now'

/** Milliseconds of the site's clock, twice a second; read anew when the page comes back from behind a locked screen. Null before the first look. */
export function useSiteClock({ utcOffset, clockKind }: Pick<CaptureContext, 'utcOffset' | 'clockKind'>): number | null {
  const [nowMs, setNowMs] = useState<number | null>(null)
  useEffect(() => {
    let [isGone, offsetMs] = [false, null as number | null]
    const look = () => {
      if (!isGone && offsetMs !== null) setNowMs(Date.now() + offsetMs)
    }
    const set = async () => {
      if (document.visibilityState !== 'visible') return
      const now = clockKind === 'real' ? null : await readNow(utcOffset, clockKind)
      offsetMs = now === null ? 0 : instantOf(now) - Date.now()
      look()
    }
    void set()
    const tick = setInterval(look, 500)
    document.addEventListener('visibilitychange', set)
    return () => {
      isGone = true
      clearInterval(tick)
      document.removeEventListener('visibilitychange', set)
    }
  }, [utcOffset, clockKind])
  return nowMs
}
