/** Runs jobs, at most `count` at once and the others in the order they came. */
export type Slots = { run<T>(job: () => Promise<T>): Promise<T> }

/** Make a set of slots; a job that throws frees its slot. */
export function createSlots(count: number): Slots {
  let free = count
  const waiting: Array<() => void> = []
  return {
    async run(job) {
      if (free > 0) free -= 1
      else await new Promise<void>((resume) => waiting.push(resume))
      try {
        return await job()
      } finally {
        const next = waiting.shift()
        if (next === undefined) free += 1
        else next()
      }
    },
  }
}
