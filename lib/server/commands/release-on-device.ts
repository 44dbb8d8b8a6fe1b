import type { FactOf } from '@/lib/domain/facts/fact-kinds'
import { mayRelease } from '@/lib/domain/fold/may-release'
import { refused } from '@/lib/domain/result'
import { roleOfParty } from '@/lib/domain/signing/signing-roles'
import { dayOf } from '@/lib/domain/time'
import type { Actor } from '@/lib/server/auth/actor'
import { loadRepairState } from '@/lib/server/store/load-repair-state'
import { authorise, releaseActOf } from './authorise'
import { conflictNote } from './conflict-note'
import type { Desk, KeptStream } from './desk'
import type { Place } from './place-of'
import type { Refusal } from './refusal'
import { barrierOf } from './refusal-of'
import { signedDecision } from './signed-decision'

/** What no conflict excuses: it was so whatever else the record held. */
const NEVER: ReadonlySet<string> = new Set([
  'not-allowed',
  'not-a-hold',
  'own-work',
  'point-unknown',
  'attempt-unknown',
])

/**
 * Keep a release that was given on a device with its key. It is judged as the record stood when it was given. When the record had moved on beyond what the device saw, the release is kept all the same, in
 * question, with a note of what it did not know: a person rules on it.
 * Refuses `not-decided` (see `mayRelease`), and as `signedDecision`.
 */
export const releaseOnDevice = signedDecision(
  'released',
  ({ point, attempt, party }, { meaning, role, ...at }) =>
    meaning === 'released' && at.point === point && at.attempt === attempt && role === roleOfParty(party),
  async (desk, { decision: release, signed, signer, kept, place, seen, now }) => {
    const barrier = await barrierAt(desk, release, { place, signer })
    // longer than the record: entries of the device itself were refused, which is nothing that it did not know of
    const isMoved = seen < now
    if (barrier && (!isMoved || barrier.isFinal)) return refused(barrier.refusal)
    if (!isMoved) return desk.append([release, signed], [{ stream: release.stream, length: now }])
    const note = noteOf(desk, release, kept, seen)
    // what came while this was decided is noted by its number only: the release is in question either way
    return desk.append([release, signed, note], [])
  },
)

/** Why the release could not be given, as the record stood when it was given. */
async function barrierAt(
  desk: Desk,
  release: FactOf<'released'>,
  { place, signer }: { place: Place; signer: Actor },
): Promise<{ refusal: Refusal; isFinal: boolean } | null> {
  const { point, attempt, party, scope } = release.body
  const act = releaseActOf(party)
  const day = dayOf(release.observedAt)
  const barred = authorise(signer, place.project, day, act)
  if (barred) return { refusal: barred, isFinal: true }
  const state = await loadRepairState(desk.store, desk.actor.tenant, release.stream, release.observedAt)
  if (!state) return { refusal: { code: 'not-found' }, isFinal: true }
  const actor = {
    person: signer.person,
    roles: signer.rolesOn(place.project, day),
    approve: signer.approvesOn(place.project, day, 'inspector'),
  }
  const allowed = mayRelease({ state, point, attempt, party, scope, actor, now: release.observedAt })
  const refusal = barrierOf(act, allowed)
  return refusal && !allowed.ok ? { refusal, isFinal: NEVER.has(allowed.error.code) } : null
}

function noteOf(desk: Desk, release: FactOf<'released'>, kept: KeptStream, seen: number): FactOf<'conflict-noted'> {
  const { point, attempt, party } = release.body
  const unseen = kept.facts.length - seen
  return conflictNote(desk, {
    decision: release.id,
    isKept: true,
    repair: release.stream,
    device: release.device,
    facts: kept.facts,
    seen,
    point,
    words: `Release of point ${point}, attempt ${attempt}, for ${party}, given without a network: ${unseen === 1 ? '1 fact was' : `${unseen} facts were`} in the record that the device had not seen.`,
  })
}
