import { handSettingsIn, keptHandSettings } from '@/lib/capture/hand-settings'

/** Milliseconds of shaking: one short tick for a key that was taken, two long ones for one that was refused. */
const SHAKES = { taken: 12, refused: [60, 40, 60] } as const

/** Let the hand feel what became of a key, where the device can shake and its settings want it. */
export function shakeKey(what: keyof typeof SHAKES): void {
  if (!handSettingsIn(keptHandSettings(localStorage)).shakes) return
  const shake = SHAKES[what]
  navigator.vibrate?.(typeof shake === 'number' ? shake : [...shake])
}
