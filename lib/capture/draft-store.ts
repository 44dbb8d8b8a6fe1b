/** A half-filled form as kept on this device: it survives a locked screen, a closed browser and a dead battery. */
export type Draft = { savedAt: number; values: unknown }

const PREFIX = 'underwrap-draft:'

/** Key of a draft: never shared between persons, points or attempts. */
export function draftKey(parts: {
  tenant: string
  person: string
  repair: string
  point: string
  attempt: number
  type: string
  of?: string
}): string {
  return [
    PREFIX + parts.tenant,
    parts.person,
    parts.repair,
    parts.point,
    parts.attempt,
    parts.type,
    parts.of ?? 'new',
  ].join('|')
}

/** Keep a draft. @returns false when the device refuses storage: the caller must say so, not go on in silence */
export function keepDraft(storage: Storage, key: string, values: unknown, now: number): boolean {
  try {
    storage.setItem(key, JSON.stringify({ savedAt: now, values } satisfies Draft))
    return true
  } catch (cause) {
    if (cause instanceof DOMException) return false
    throw cause
  }
}

/** The draft under a key, or null when there is none or it cannot be read. */
export function loadDraft(storage: Storage, key: string): Draft | null {
  const text = storage.getItem(key)
  if (text === null) return null
  try {
    const parsed: unknown = JSON.parse(text)
    return parsed !== null &&
      typeof parsed === 'object' &&
      'savedAt' in parsed &&
      typeof parsed.savedAt === 'number' &&
      'values' in parsed
      ? { savedAt: parsed.savedAt, values: parsed.values }
      : null
  } catch (cause) {
    if (cause instanceof SyntaxError) return null
    throw cause
  }
}

/** Drop a draft once its fact is on the server, or when a person says so. */
export function dropDraft(storage: Storage, key: string): void {
  storage.removeItem(key)
}
