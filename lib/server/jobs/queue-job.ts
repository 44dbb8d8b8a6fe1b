import { sql } from 'drizzle-orm'
import { makeWorkerUtils } from 'graphile-worker'
import { schema } from '@/db/client'
import type { Store, TenantId } from '@/lib/server/store/store'

/**
 * Queue long work under a key of the tenant, by which its progress can be read. While a job of this key waits or runs, asking again
 * changes nothing; after it is done or failed it is queued anew. `attemptsAtMost` 1 never repeats a failed task.
 */
export async function queueJob(
  store: Store,
  tenant: TenantId,
  job: { task: string; key: string; input: unknown; attemptsAtMost?: number },
): Promise<{ key: string; isNew: boolean }> {
  const utils = await makeWorkerUtils({ pgPool: store.db.pool })
  try {
    await utils.migrate()
    const { jobProgress } = schema
    const fresh = {
      state: 'waiting',
      task: job.task,
      doneCount: 0,
      totalCount: null,
      note: null,
      result: null,
      updatedAt: sql`now()`,
    }
    const [taken] = await store.db.queries
      .insert(jobProgress)
      .values({ tenant, key: job.key, ...fresh })
      .onConflictDoUpdate({
        target: [jobProgress.tenant, jobProgress.key],
        set: fresh,
        setWhere: sql`${jobProgress.state} in ('done', 'failed')`,
      })
      .returning({ key: jobProgress.key })
    if (taken)
      await utils.addJob(
        job.task,
        { tenant, key: job.key, input: job.input },
        { jobKey: `${tenant} ${job.key}`, jobKeyMode: 'replace', maxAttempts: job.attemptsAtMost ?? 3 },
      )
    return { key: job.key, isNew: taken !== undefined }
  } finally {
    await utils.release()
  }
}
