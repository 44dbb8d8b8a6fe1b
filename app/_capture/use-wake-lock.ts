'use client'
import { useEffect, useState } from 'react'

/** Keeps the screen on while something runs, where the browser can; asked for again when the page comes back. Answers whether it holds. */
export function useWakeLock(isWanted: boolean): boolean {
  const [isHeld, setHeld] = useState(false)
  useEffect(() => {
    if (!isWanted || !('wakeLock' in navigator)) return
    let [isGone, lock] = [false, null as WakeLockSentinel | null]
    const ask = async () => {
      if (isGone || document.visibilityState !== 'visible') return
      try {
        const asked = await navigator.wakeLock.request('screen')
        if (isGone) return void asked.release()
        lock = asked
        setHeld(true)
        asked.addEventListener('release', () => setHeld(false))
      } catch (cause) {
        // Refused, as on a low battery: the countdown runs on, the screen may go dark.
        if (!(cause instanceof DOMException)) throw cause
      }
    }
    void ask()
    document.addEventListener('visibilitychange', ask)
    return () => {
      isGone = true
      document.removeEventListener('visibilitychange', ask)
      void lock?.release()
    }
  }, [isWanted])
  return isHeld
}
