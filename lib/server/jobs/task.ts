import type { Store, TenantId } from '@/lib/server/store/store'
import type { ProgressChange } from './job-progress'

/** What a task is given: the store, the tenant it was queued for, and where to tell how far it is. */
export type TaskContext = {
  store: Store
  tenant: TenantId
  dataDir: string
  tell(change: Pick<ProgressChange, 'doneCount' | 'totalCount' | 'note'>): Promise<void>
}

/** A kind of long work. Its input comes from the queue and is parsed by the task; its answer is kept as the job's result. */
export type Task = (context: TaskContext, input: unknown) => Promise<unknown>
export type TaskTable = Readonly<Record<string, Task>>
