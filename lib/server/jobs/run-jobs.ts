import { Logger, type Runner, run, type TaskList } from 'graphile-worker'
import * as z from 'zod'
import type { OpenStore } from '@/lib/server/store/open-store'
import { keepJobProgress } from './job-progress'
import type { Task, TaskTable } from './task'

const Payload = z.strictObject({ tenant: z.string(), key: z.string(), input: z.unknown() })
const silent = new Logger(() => () => {})

/** Worker of this process: it takes jobs from the store's queue until `stop`. A task that throws is tried again by the queue, and told as failed meanwhile. */
export async function runJobs(
  store: OpenStore,
  tasks: TaskTable,
  options: { atOnce?: number } = {},
): Promise<{ stop(): Promise<void>; promise: Promise<void> }> {
  const taskList: TaskList = Object.fromEntries(
    Object.entries(tasks).map(([name, task]) => [name, runnerOf(store, task)]),
  )
  const runner: Runner = await run({
    pgPool: store.db.pool,
    taskList,
    concurrency: options.atOnce ?? 1,
    noHandleSignals: true,
    pollInterval: 1000,
    logger: silent,
  })
  return { stop: () => runner.stop(), promise: runner.promise }
}

function runnerOf(store: OpenStore, task: Task) {
  return async (payload: unknown): Promise<void> => {
    const { tenant, key, input } = Payload.parse(payload)
    await keepJobProgress(store, tenant, key, { state: 'running', note: null })
    try {
      const result = await task(
        { store, tenant, dataDir: store.dataDir, tell: (change) => keepJobProgress(store, tenant, key, change) },
        input,
      )
      await keepJobProgress(store, tenant, key, { state: 'done', result: result ?? null })
    } catch (cause) {
      await keepJobProgress(store, tenant, key, {
        state: 'failed',
        note: cause instanceof Error ? cause.message : String(cause),
      })
      throw cause
    }
  }
}
