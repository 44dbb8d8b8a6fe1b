import type { SmallJob } from './small-job'
import { REPAIR } from './small-job-plan'
import { climate } from './small-job-records'

/** Digest of the scan of the sheet. */
export const SCAN = 'e'.repeat(64)
/** Where a transcribed record says that its paper lies. */
export const PAPER = { tally: SCAN, keeper: 'crew office', place: 'file 3' }

/** Climate at point 07 as transcribed: its sheet scanned, observed by the technician on paper, keyed by the lead. */
export function climateFromPaper(job: SmallJob) {
  const scan = job.attach('07', '05-12 12:00', 'e', {
    caption: 'Tally sheet',
    scan: { sheet: 'MD-0099/07/1/260512-080000' },
  })
  const body = { point: '07', attempt: 1, record: climate('05-12 09:22'), transcribed: PAPER }
  const entered = { by: 'edda', enteredBy: 'maren', enteredAt: '05-12 12:05' }
  const record = job.make(REPAIR, 'recorded', '05-12 09:22', body, entered)
  return { scan, record }
}
