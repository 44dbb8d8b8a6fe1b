import * as z from 'zod'

const FIRST = { shakes: true, echoes: true, largeKeys: null }

/** How this device behaves under a hand. Kept on it alone: two people with other gloves may share it. */
export const HandSettings = z.lazy(() =>
  z.object({
    /** A short shake at each key, a long one at a key that was refused. */
    shakes: z.boolean().catch(FIRST.shakes),
    /** The value taken last stands large over the keys, to be read back. */
    echoes: z.boolean().catch(FIRST.echoes),
    /** Our own large keys for numbers instead of the device's. Null: as its pointer is, a finger or a mouse. */
    largeKeys: z.boolean().nullable().catch(FIRST.largeKeys),
  }),
)
export type HandSettings = z.infer<typeof HandSettings>

/** Asked for at every key, and the same text nearly every time. */
let latest: { text: string; settings: HandSettings } | null = null
const KEY = 'underwrap-hands'

/** The settings kept on this device; the first ones when none are kept or they cannot be read. */
export function handSettingsIn(text: string | null): HandSettings {
  if (text === null) return FIRST
  if (latest?.text !== text) latest = { text, settings: readSettings(text) }
  return latest.settings
}

function readSettings(text: string): HandSettings {
  try {
    const kept = HandSettings.safeParse(JSON.parse(text))
    return kept.success ? kept.data : FIRST
  } catch (cause) {
    if (cause instanceof SyntaxError) return FIRST
    throw cause
  }
}

/** What this device keeps of its settings, as it is written; null when nothing is kept or it may not be read. */
export function keptHandSettings(storage: Storage): string | null {
  return storage.getItem(KEY)
}

/** Keep the settings. @returns false when the device refuses storage: they then hold for this page alone */
export function keepHandSettings(storage: Storage, settings: HandSettings): boolean {
  try {
    storage.setItem(KEY, JSON.stringify(settings))
    return true
  } catch (cause) {
    if (cause instanceof DOMException) return false
    throw cause
  }
}
