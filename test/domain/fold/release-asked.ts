import type { DecidingActor } from '@/lib/domain/fold/decision'
import { mayRelease } from '@/lib/domain/fold/may-release'
import type { Party } from '@/lib/domain/roles'
import { at, person } from './fact-maker'
import type { smallJob } from './small-job'
import { fold } from './small-job-state'

export const INSPECTOR: DecidingActor = { person: person('tobias'), roles: ['inspector'], approve: false }

export const LEAD: DecidingActor = { person: person('maren'), roles: ['lead'], approve: false }

export const CLIENT: DecidingActor = { person: person('ludmila'), roles: ['client'], approve: false }

/** Whether a person may release a point of the small job at a moment. */
export const ask = (
  job: ReturnType<typeof smallJob>,
  when: string,
  point: string,
  actor = INSPECTOR,
  party: Party = 'inspector',
  attempt = 1,
) => mayRelease({ state: fold(job.facts, when), point, attempt, party, actor, scope: { kind: 'whole' }, now: at(when) })
