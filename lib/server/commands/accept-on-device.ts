import { refused } from '@/lib/domain/result'
import { dayOf } from '@/lib/domain/time'
import { loadRepairState } from '@/lib/server/store/load-repair-state'
import { acceptingPoint } from './accepting'
import { authorise } from './authorise'
import { notItsOwn, signedDecision } from './signed-decision'

/**
 * Keep an acceptance that was given on a device with the inspector's key. It is judged as the record stood when it was given. An acceptance closes the record, so one that did not know all of it is not kept: it
 * stays on the device until who gave it decides anew.
 * Refuses `not-decided` (see `acceptingPoint`), `heads-moved`, and as `signedDecision`.
 */
export const acceptOnDevice = signedDecision(
  'accepted',
  (_accepted, { meaning, role }) => meaning === 'accepted' && role === 'inspector',
  async (desk, { decision: accepted, signed, signer, place, seen, now }) => {
    const { stream, observedAt } = accepted
    // longer than the record: entries of the device itself were refused, which is nothing that it did not know of
    if (seen < now) return refused({ code: 'heads-moved', moved: [{ stream, seen, now }] })
    const day = dayOf(observedAt)
    const lacking = authorise(signer, place.project, day, 'accept repair')
    if (lacking) return refused(lacking)
    const state = await loadRepairState(desk.store, desk.actor.tenant, stream, observedAt)
    if (!state) return refused({ code: 'not-found' })
    const roles = signer.rolesOn(place.project, day)
    const approve = signer.approvesOn(place.project, day, 'inspector')
    const point = acceptingPoint(state, accepted, { person: signer.person, roles, approve })
    if (!point.ok) return point
    const { no, current } = point.value
    return signed.body.point === no && signed.body.attempt === current.attempt
      ? desk.append([accepted, signed], [{ stream, length: now }])
      : refused(notItsOwn('accepted'))
  },
)
