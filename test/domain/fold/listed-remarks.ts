import type { smallJob } from './small-job'
import { fold } from './small-job-state'

/** Texts of what is listed as remarkable at a moment. */
export const texts = (job: ReturnType<typeof smallJob>, when: string) =>
  fold(job.facts, when).remarkable.map((one) => one.text)
