import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { type JobProgress, loadJobProgress } from '@/lib/server/jobs/job-progress'
import { queueJob } from '@/lib/server/jobs/queue-job'
import { runJobs } from '@/lib/server/jobs/run-jobs'
import { openTestStore, type TestStore } from './test-store'

describe('job queue', () => {
  let store: TestStore
  let stop = async () => {}
  const seen: unknown[] = []
  let letGo = () => {}

  beforeAll(async () => {
    store = await openTestStore()
    const jobs = await runJobs(store, {
      count: async ({ tenant, tell }, input) => {
        seen.push([tenant, input])
        await tell({ doneCount: 2, totalCount: 3, note: 'half' })
        await new Promise<void>((settle) => {
          letGo = settle
        })
        return { file: 'out.pdf' }
      },
      break: async () => {
        throw new Error('the disk is full')
      },
    })
    stop = jobs.stop
  })
  afterAll(async () => {
    await stop()
    await store.remove()
  })

  async function until(key: string, wanted: (progress: JobProgress) => boolean): Promise<JobProgress> {
    for (let tries = 0; tries < 200; tries += 1) {
      const progress = await loadJobProgress(store, store.tenant, key)
      if (progress && wanted(progress)) return progress
      await new Promise((settle) => setTimeout(settle, 50))
    }
    throw new Error(`job ${key} never got there`)
  }

  test('a job tells how far it is and keeps its answer; asking again while it runs changes nothing', async () => {
    expect(
      (await queueJob(store, store.tenant, { task: 'count', key: 'dossier MD-1', input: { repair: 'MD-1' } })).isNew,
    ).toBe(true)
    expect(await until('dossier MD-1', (one) => one.doneCount === 2)).toMatchObject({
      state: 'running',
      totalCount: 3,
      note: 'half',
    })
    expect((await queueJob(store, store.tenant, { task: 'count', key: 'dossier MD-1', input: {} })).isNew).toBe(false)
    letGo()
    expect((await until('dossier MD-1', (one) => one.state === 'done')).result).toEqual({ file: 'out.pdf' })
    expect(seen).toEqual([[store.tenant, { repair: 'MD-1' }]])
  })

  test('a job that throws is told as failed with the reason, and can be asked for again', async () => {
    await queueJob(store, store.tenant, { task: 'break', key: 'broken', input: null, attemptsAtMost: 1 })
    expect((await until('broken', (one) => one.state === 'failed')).note).toBe('the disk is full')
    expect(
      (await queueJob(store, store.tenant, { task: 'break', key: 'broken', input: null, attemptsAtMost: 1 })).isNew,
    ).toBe(true)
  })

  test('another tenant does not see the job, and an unknown key is none', async () => {
    expect(await loadJobProgress(store, 'tenant-b', 'broken')).toBeNull()
    expect(await loadJobProgress(store, store.tenant, 'nothing')).toBeNull()
  })
})
