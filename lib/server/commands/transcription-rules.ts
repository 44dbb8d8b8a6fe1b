import type { BodyOf, FactOf } from '@/lib/domain/facts/fact-kinds'
import { foldProject, rolesOn } from '@/lib/domain/fold/fold-project'
import type { Role } from '@/lib/domain/roles'
import { dayOf } from '@/lib/domain/time'
import { ACTS, recordActOf } from './authorise'
import type { Desk } from './desk'
import type { Observed, Subject } from './fact-command'
import type { Refusal } from './refusal'

/**
 * What a copy from paper must state and only a copy may: who observed it, when, and the scan. Nobody checks their own copy, so that no check is taken with it. Bad fields by path; empty when
 * there are none.
 */
export function copyFaults(body: BodyOf<'recorded'>, { observedBy, observedAt }: Observed): Record<string, string[]> {
  const { transcribed } = body
  const faults: Record<string, string[]> = {}
  if (!transcribed) {
    if (observedBy) faults.observedBy = ['only a record transcribed from paper names another person who observed it']
    return faults
  }
  if (!observedBy) faults.observedBy = ['say who observed it: the name on the paper']
  if (!observedAt) faults.observedAt = ['say when it was observed: the time on the paper']
  if (!transcribed.tally) faults['body.transcribed.tally'] = ['attach the scan of the paper']
  if (transcribed.checkedBy)
    faults['body.transcribed.checkedBy'] = ['a second person checks it, in an act of their own']
  return faults
}

/** Whether a copy from paper may be kept: its observer held a role that records such on that day, and its scan is attached to the repair. */
export async function copyBarrier(
  desk: Pick<Desk, 'factsOf' | 'now'>,
  { facts, place }: Subject,
  { body, observedAt, observedBy }: FactOf<'recorded'>,
): Promise<Refusal | null> {
  const { transcribed, record } = body
  if (!transcribed || place.project === 'any') return null
  const project = foldProject((await desk.factsOf(place.project)) ?? [], place.project, desk.now(place.offset))
  const needs: readonly Role[] = ACTS[recordActOf(record.type)]
  const day = dayOf(observedAt)
  const held = project ? rolesOn(project, observedBy, day).roles : []
  if (!held.some((role) => needs.includes(role)))
    return { code: 'observer-not-allowed', person: observedBy, day, needs: [...needs] }
  return facts.some(
    (one) => one.kind === 'photo-attached' && one.body.scan && one.body.photo.sha256 === transcribed.tally,
  )
    ? null
    : { code: 'scan-missing' }
}
