import { runJobs } from '@/lib/server/jobs/run-jobs'
import { taskTable } from '@/lib/server/jobs/task-table'
import { withStore } from './with-store'

/** `work`: take jobs from the queue until this process is told to stop. */
export async function runWork(): Promise<void> {
  await withStore(async (store) => {
    const jobs = await runJobs(store, taskTable)
    const stop = () => void jobs.stop()
    process.once('SIGINT', stop)
    process.once('SIGTERM', stop)
    await jobs.promise
  })
}
