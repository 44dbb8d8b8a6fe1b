'use client'
import { useMemo, useSyncExternalStore } from 'react'
import { type HandSettings, handSettingsIn, keepHandSettings, keptHandSettings } from '@/lib/capture/hand-settings'

const CHANGED = 'underwrap-hands-changed'
let finger: MediaQueryList | null = null
/** Settings of this page where the device refuses storage. */
let ofThisPage: string | null = null

function kept(): string | null {
  return ofThisPage ?? keptHandSettings(localStorage)
}

/** Whether a finger is what points here; asked of the browser once, read at every drawing. */
function fingerHere(): MediaQueryList {
  finger ??= window.matchMedia('(pointer: coarse)')
  return finger
}

function watch(look: () => void): () => void {
  const finger = fingerHere()
  for (const name of [CHANGED, 'storage']) window.addEventListener(name, look)
  finger.addEventListener('change', look)
  return () => {
    for (const name of [CHANGED, 'storage']) window.removeEventListener(name, look)
    finger.removeEventListener('change', look)
  }
}

/** The settings for the hand as kept on this device, and whether our own large keys show. They change everywhere at once. */
export function useHandSettings(): {
  settings: HandSettings
  hasLargeKeys: boolean
  change(part: Partial<HandSettings>): void
} {
  const text = useSyncExternalStore(watch, kept, () => null)
  const isFinger = useSyncExternalStore(
    watch,
    () => fingerHere().matches,
    () => false,
  )
  return useMemo(() => {
    const settings = handSettingsIn(text)
    return {
      settings,
      hasLargeKeys: settings.largeKeys ?? isFinger,
      change(part) {
        const next = { ...settings, ...part }
        ofThisPage = keepHandSettings(localStorage, next) ? null : JSON.stringify(next)
        window.dispatchEvent(new Event(CHANGED))
      },
    }
  }, [text, isFinger])
}
