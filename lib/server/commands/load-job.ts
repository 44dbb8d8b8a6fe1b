import * as z from 'zod'
import { done, refused } from '@/lib/domain/result'
import { loadJobProgress } from '@/lib/server/jobs/job-progress'
import { authorise } from './authorise'
import { command } from './command'

const LoadJob = z.strictObject({ key: z.string().min(1).max(200) })

/** How far a job of the caller's tenant is: `{ key }`. Refuses `invalid`, `not-allowed`, `not-found`. */
export const loadJob = command(LoadJob, async (desk, { key }) => {
  const barred = authorise(desk.actor, 'any', desk.today(null), 'read record')
  if (barred) return refused(barred)
  const progress = await loadJobProgress(desk.store, desk.actor.tenant, key)
  return progress ? done(progress) : refused({ code: 'not-found' })
})
