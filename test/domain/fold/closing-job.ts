import type { DecidingActor } from '@/lib/domain/fold/decision'
import { person } from './fact-maker'
import { prepared, smallJob, wrapped } from './small-job'
import { REPAIR } from './small-job-plan'
import { checklist } from './small-job-records'

export const INSPECTOR: DecidingActor = { person: person('tobias'), roles: ['inspector'], approve: false }

export const NCR = 'nonconformance:NCR-0007'

export const dec = (digits: number, scale = 0) => ({ digits, scale })

export function closing() {
  const job = smallJob()
  prepared(job)
  wrapped(job)
  job.record('19', 1, '05-13 11:00', checklist)
  job.submit('19', '05-13 11:05')
  return job
}

export const raised = (job: ReturnType<typeof smallJob>, when: string) =>
  job.make(NCR, 'nonconformance-raised', when, {
    number: 'NCR-0007',
    title: 'hardness',
    what: 'under the limit',
    requirement: '7.1',
    repair: REPAIR,
    point: '16',
    attempt: 1,
    linked: [],
    evidence: [],
    blocks: ['19'],
    causeClass: 'weather',
  })

export function conceded(job: ReturnType<typeof smallJob>, limits: object = {}) {
  raised(job, '05-13 08:00')
  job.make(NCR, 'assessed', '05-13 08:10', { finding: 'cold water' })
  const proposal = job.make(
    NCR,
    'disposition-proposed',
    '05-13 08:20',
    { disposition: 'use as is', what: 'accept', limits, conceded: [{ point: '16', attempt: 1 }] },
    { by: 'ravi' },
  )
  job.make(NCR, 'disposition-approved', '05-13 08:30', { proposal: proposal.id, party: 'engineer' }, { by: 'ravi' })
  return proposal
}
