import { claimedTime } from '../claimed-time'
import type { FactOf } from '../facts/fact-kinds'
import { instantOf, Moment } from '../time'
import type { AttemptSlot } from './attempt-slots'
import { ofKind } from './order-facts'
import type { RepairGround } from './repair-ground'
import type { PhotoFlag, PhotoState } from './repair-state'

/** A claim of time further than this from the entry is shown as differing; a day and more as old. Shown to a person, never a verdict. */
const CLOCK_DIFFERS_MS = 5 * 60_000
const OLD_METADATA_MS = 24 * 3_600_000

/** Scans of tally sheets attached to an attempt. */
export function scansOf(slot: Pick<AttemptSlot, 'facts'>): FactOf<'photo-attached'>[] {
  return ofKind(slot.facts, 'photo-attached').filter((fact) => fact.body.scan !== undefined)
}

/** Photos of an attempt, scans of paper aside, with what a reviewer decided and everything that is doubtful about them. */
export function photoStates(ground: RepairGround, slot: AttemptSlot): PhotoState[] {
  const judgements = ofKind(ground.own, 'photo-judged')
  const byDigest = new Map<string, FactOf<'photo-attached'>[]>()
  for (const one of ofKind(ground.facts, 'photo-attached')) {
    const { sha256 } = one.body.photo
    const same = byDigest.get(sha256)
    if (same) same.push(one)
    else byDigest.set(sha256, [one])
  }
  const photos = ofKind(slot.facts, 'photo-attached').filter((fact) => fact.body.scan === undefined)
  return photos.map((fact) => ({
    fact,
    judged: judgements.findLast((one) => one.body.photo === fact.id) ?? null,
    flags: [...copyFlags(ground, fact, byDigest.get(fact.body.photo.sha256) ?? []), ...claimFlags(fact)],
  }))
}

function copyFlags(
  ground: RepairGround,
  photo: FactOf<'photo-attached'>,
  sameBytes: readonly FactOf<'photo-attached'>[],
): PhotoFlag[] {
  const decisions = ofKind(ground.own, 'likeness-judged')
  const decisionWith = (other: string) =>
    decisions.findLast(
      (one) =>
        (one.body.photo === photo.id && one.body.other === other) ||
        (one.body.other === photo.id && one.body.photo === other),
    ) ?? null
  const told = (ground.beside.likeness ?? [])
    .filter((one) => one.photo === photo.id)
    .map(({ kind, other }): PhotoFlag => ({ kind, other, decision: decisionWith(other.fact) }))
  const seen = new Set(told.map((flag) => flag.other?.fact))
  const within = sameBytes
    .filter((one) => one.id !== photo.id && !seen.has(one.id))
    .map(
      (one): PhotoFlag => ({
        kind: 'exact copy',
        other: { repair: one.stream, fact: one.id, point: one.body.point },
        decision: decisionWith(one.id),
      }),
    )
  return [...told, ...within]
}

function claimFlags(photo: FactOf<'photo-attached'>): PhotoFlag[] {
  const { claims } = photo.body.photo
  if (!claims.hasOriginalMetadata) return [{ kind: 'no original', decision: null }]
  const claimed = claimedTime(claims)
  if (!claimed) return []
  const siteOffset = photo.observedAt.endsWith('Z') ? 'Z' : photo.observedAt.slice(-6)
  const takenAt = Moment.safeParse(claimed.time + (claimed.offset ?? siteOffset))
  if (!takenAt.success) return []
  const earlierByMs = instantOf(photo.observedAt) - instantOf(takenAt.data)
  if (earlierByMs >= OLD_METADATA_MS) return [{ kind: 'old metadata', decision: null }]
  return Math.abs(earlierByMs) > CLOCK_DIFFERS_MS ? [{ kind: 'clock differs', decision: null }] : []
}

/** Demands of the attempt that photos on this device answer, one each, before the record has them. */
export function photosToComeOf({ beside }: RepairGround, slot: AttemptSlot): string[] {
  return (beside.photosToCome ?? [])
    .filter((one) => one.point === slot.no && one.attempt === slot.attempt)
    .map((one) => one.demand)
}
