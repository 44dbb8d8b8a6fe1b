'use client'
import { useEffect, useState } from 'react'

/** Milliseconds of the store's clock, each second on from the `nowMs` that was taken with the page. */
export function useStoreNow(nowMs: number): number {
  const [now, setNow] = useState(nowMs)
  useEffect(() => {
    const ahead = nowMs - Date.now()
    const tick = setInterval(() => setNow(Date.now() + ahead), 1000)
    return () => clearInterval(tick)
  }, [nowMs])
  return now
}
