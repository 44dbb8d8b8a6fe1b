/** What a browser tells of its storage; `createDeviceStorage` reads it from `navigator.storage`. */
export interface DeviceStorage {
  /** Ask that what is kept be kept until a person clears it. False when refused. */
  persist(): Promise<boolean>
  /** Null where the browser does not tell. */
  estimate(): Promise<{ usageBytes: number; quotaBytes: number } | null>
}

/** Left free, so that a state can still be written while entries go up. */
export const RESERVE_BYTES = 10_000_000
const NEARLY_FULL_BYTES = 150_000_000

/**
 * How safely and how much this device keeps, told before anything is captured. `keeping`: `kept` until a person clears it; `may be cleared` by the browser when it runs short; `until this
 * page closes` when IndexedDB was refused. `space`: `nearly full` is a warning, `full` stops capture.
 */
export type Room = {
  keeping: 'kept' | 'may be cleared' | 'until this page closes'
  space: 'enough' | 'nearly full' | 'full' | 'unknown'
  freeBytes: number | null
}

/** Judge the room for so many bytes more. */
export async function judgeRoom(
  storage: DeviceStorage,
  keeps: 'over a reload' | 'until this page closes',
  neededBytes = 0,
): Promise<Room> {
  const [isKept, told] = await Promise.all([
    keeps === 'until this page closes' ? false : storage.persist(),
    storage.estimate(),
  ])
  const keeping = keeps === 'until this page closes' ? keeps : isKept ? 'kept' : 'may be cleared'
  if (!told) return { keeping, space: 'unknown', freeBytes: null }
  const freeBytes = Math.max(0, told.quotaBytes - told.usageBytes)
  const space =
    freeBytes < neededBytes + RESERVE_BYTES
      ? 'full'
      : freeBytes < neededBytes + NEARLY_FULL_BYTES
        ? 'nearly full'
        : 'enough'
  return { keeping, space, freeBytes }
}

/** The storage of this browser. On an address that is not secure there is none to ask, and it answers so. */
export function createDeviceStorage(storage: StorageManager | undefined): DeviceStorage {
  // asked once a page: some browsers ask the person each time
  let asked: Promise<boolean> | null = null
  return {
    async persist() {
      // the first answer also tells what was granted before; later ones whether it was since
      if (asked && (await storage?.persisted?.())) return true
      asked ??= storage?.persist?.() ?? Promise.resolve(false)
      return asked
    },
    async estimate() {
      const told = await storage?.estimate?.()
      return told?.quota === undefined ? null : { usageBytes: told.usage ?? 0, quotaBytes: told.quota }
    },
  }
}
