/** One at a time, over all tabs and workers of a device: `busy` when another holds the lock. */
export interface OutboxLocks {
  run<T>(name: string, work: () => Promise<T>): Promise<T | 'busy'>
}

/** Locks of the browser, shared by its tabs and its service worker, and freed when their holder closes or crashes. */
export function createWebLocks(locks: LockManager): OutboxLocks {
  return {
    run: (name, work) =>
      locks.request(name, { ifAvailable: true }, async (lock) => (lock ? work() : ('busy' as const))),
  }
}

/** Locks within this page alone, for a browser without Web Locks. Two tabs may then send one entry; the server receives it once. */
export function createPageLocks(): OutboxLocks {
  const held = new Set<string>()
  return {
    async run(name, work) {
      if (held.has(name)) return 'busy'
      held.add(name)
      try {
        return await work()
      } finally {
        held.delete(name)
      }
    },
  }
}
