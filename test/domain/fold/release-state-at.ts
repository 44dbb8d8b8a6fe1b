import type { smallJob } from './small-job'
import { fold, releaseOf } from './small-job-state'

/** State of the first release of a point as it stands at a moment. */
export const stateOf = (job: ReturnType<typeof smallJob>, when: string, no: string) =>
  releaseOf(fold(job.facts, when), no)?.state
