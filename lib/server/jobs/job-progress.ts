import { and, eq, sql } from 'drizzle-orm'
import * as z from 'zod'
import { schema } from '@/db/client'
import type { Store, TenantId } from '@/lib/server/store/store'

/** How far a long job is. `result` is what the task answered once `done`; `note` says what it does or why it failed. */
export const JobProgress = z.strictObject({
  key: z.string(),
  task: z.string(),
  state: z.enum(['waiting', 'running', 'done', 'failed']),
  doneCount: z.int().nonnegative(),
  totalCount: z.int().nonnegative().nullable(),
  note: z.string().nullable(),
  result: z.unknown(),
})
export type JobProgress = z.infer<typeof JobProgress>

/** Progress of the job that was queued under a key in this tenant; null when none was. */
export async function loadJobProgress(
  store: Pick<Store, 'db'>,
  tenant: TenantId,
  key: string,
): Promise<JobProgress | null> {
  const { jobProgress } = schema
  const [row] = await store.db.queries
    .select({
      key: jobProgress.key,
      task: jobProgress.task,
      state: jobProgress.state,
      doneCount: jobProgress.doneCount,
      totalCount: jobProgress.totalCount,
      note: jobProgress.note,
      result: jobProgress.result,
    })
    .from(jobProgress)
    .where(and(eq(jobProgress.tenant, tenant), eq(jobProgress.key, key)))
  return row ? JobProgress.parse(row) : null
}

export type ProgressChange = {
  state?: JobProgress['state']
  doneCount?: number
  totalCount?: number | null
  note?: string | null
  result?: unknown
}

/** Write down how far a job is. */
export async function keepJobProgress(
  store: Pick<Store, 'db'>,
  tenant: TenantId,
  key: string,
  change: ProgressChange,
): Promise<void> {
  const { jobProgress } = schema
  await store.db.queries
    .update(jobProgress)
    .set({ ...change, updatedAt: sql`now()` })
    .where(and(eq(jobProgress.tenant, tenant), eq(jobProgress.key, key)))
}
