import { type CriterionResult, type Question, rollUp } from '../judge/verdict'
import type { Party } from '../roles'
import { instantOf } from '../time'
import { type AttemptSlot, attemptKey, type PointSlots } from './attempt-slots'
import type { Fall } from './fall'
import { fallEvents } from './fall-events'
import type { JudgedSlot } from './judge-attempts'
import { isSubmitted, missingForRelease } from './missing-for-release'
import { ofKind } from './order-facts'
import { isWaived, type PassedHold, passedHolds } from './passed-holds'
import { photoStates, photosToComeOf, scansOf } from './photo-states'
import { isReceivedAfterUse } from './received-after-use'
import { holdParties, releaseHistories, releaseState } from './release-states'
import { relyingStep } from './relying-step'
import type { RepairGround } from './repair-ground'
import type { AttemptState, AttemptStateName, RecordState, RepairState } from './repair-state'
import { signatureStates, signaturesOver } from './signature-states'
import { transcriptionState, uncheckedTranscriptions } from './transcription-states'
import { earliest, latest } from './work-span'

/** The state of every attempt of every point, but for "closed", which needs the points before it. */
export function attemptStates(
  ground: RepairGround,
  points: readonly PointSlots[],
  judged: ReadonlyMap<AttemptSlot, JudgedSlot>,
  conflicts: RepairState['conflicts'],
): Map<AttemptSlot, AttemptState> {
  const falls: Fall[] = fallEvents(ground, points, judged)
  const slots = points.flatMap((point) => point.attempts)
  const histories = new Map(slots.map((slot) => [slot, releaseHistories(ground, slot, falls)]))
  const passes = new Map(slots.map((slot) => [slot, passedHolds(ground, points, slot, histories)]))
  const passedAt = new Set(
    [...passes.values()].flatMap((list) => list.map((one) => attemptKey(one.hold, one.holdAttempt))),
  )
  return new Map(
    slots.map((slot) => {
      const criteria = judged.get(slot)?.criteria ?? []
      const verdict = rollUp(criteria.map((one) => one.verdict))
      const questions = distinctQuestions(criteria.flatMap((one) => one.questions))
      const conceded = ground.conceded.get(attemptKey(slot.no, slot.attempt))?.stream ?? null
      const photos = photoStates(ground, slot)
      const photosToCome = photosToComeOf(ground, slot)
      const signatures = signatureStates(ground, ofKind(slot.facts, 'signed'))
      const step = relyingStep(ground, points, slot)
      const isUnproven = conceded === null && criteria.some((one) => one.verdict !== 'pass' && !isAnswered(ground, one))
      const releases = (histories.get(slot) ?? []).map((history) => ({
        ...releaseState(
          history,
          step,
          doubtOf(questions) ??
            (isUnproven
              ? { at: history.fact.observedAt, cause: `The records as they stand give: ${verdict}`, fact: null }
              : null),
        ),
        receivedAfterUse: isReceivedAfterUse(ground, points, slot, history.fact),
      }))
      const state: AttemptState = {
        point: slot.no,
        attempt: slot.attempt,
        state: 'open',
        photos,
        photosToCome,
        scans: scansOf(slot),
        signatures,
        releases,
        criteria,
        verdict,
        questions,
        conceded,
        records: slot.records.map(
          (one): RecordState => ({
            fact: one.fact,
            record: one.record,
            corrections: one.corrections,
            overruledBy: one.overruledBy,
            late: one.late,
            signedBy: signaturesOver(one, signatures).map((fact) => fact.id),
            transcription: transcriptionState(one, ground.own),
          }),
        ),
        submitted: ofKind(slot.facts, 'submitted').at(-1) ?? null,
        isSubmitted: isSubmitted(slot),
        refusals: ofKind(slot.facts, 'release-refused'),
        notApplicable: ofKind(slot.facts, 'marked-not-applicable').at(-1) ?? null,
        opened: slot.opened,
        passedWithoutRelease: (passes.get(slot) ?? []).map(({ hold, at, by }: PassedHold) => ({ hold, at, by })),
        missing: missingForRelease({
          slot,
          criteria,
          verdict,
          photos,
          photosToCome,
          signatures,
          unchecked: uncheckedTranscriptions(slot.governing, ground.own),
          isConceded: conceded !== null,
          hasSpecification: judged.get(slot)?.context !== null,
          conflicts,
        }),
        firstAt: earliest(slot.facts.map((fact) => fact.observedAt)),
        lastAt: latest(slot.facts.map((fact) => fact.observedAt)),
      }
      return [slot, { ...state, state: nameOf(ground, slot, state, passedAt.has(attemptKey(slot.no, slot.attempt))) }]
    }),
  )
}

/** A result that stopped being a pass only by a doubt which a person has answered: the verdict stays, the release is no longer in question. */
function isAnswered(ground: RepairGround, result: CriterionResult): boolean {
  const closing = new Set(
    ofKind(ground.own, 'impact-decided')
      .filter((one) => one.body.decision !== 'rework' && one.body.decision !== 'nonconformance raised')
      .map((one) => one.id),
  )
  return (
    result.questions.length > 0 &&
    result.questions.every((one) => one.decision !== undefined && closing.has(one.decision))
  )
}

function distinctQuestions(questions: readonly Question[]): Question[] {
  return [...new Map(questions.map((one) => [`${one.cause} ${one.causeKind}`, one])).values()]
}

function doubtOf(questions: readonly Question[]): { at: string; cause: string; fact: Question['cause'] } | null {
  const open = questions.filter((one) => one.decision === undefined)
  const first = open.toSorted((a, b) => instantOf(a.since) - instantOf(b.since))[0]
  return first ? { at: first.since, cause: `In question: ${first.causeKind}`, fact: first.cause } : null
}

/** Parties that hold this attempt and have no whole release in force, nor gave up their right in writing. */
export function awaitedParties(ground: RepairGround, slot: AttemptSlot, state: AttemptState): Party[] {
  return holdParties(slot.plan).filter((party) => {
    const stands = state.releases.some(
      (one) =>
        one.fact.body.party === party &&
        one.fact.body.scope.kind === 'whole' &&
        (one.state === 'valid' || one.state === 'used'),
    )
    return !stands && !isWaived(ground, slot, party, ground.asOf)
  })
}

function nameOf(ground: RepairGround, slot: AttemptSlot, state: AttemptState, isPassed: boolean): AttemptStateName {
  if (state.notApplicable) return 'not applicable'
  if (slot.closedAt !== null) return 'superseded'
  const awaited = awaitedParties(ground, slot, state)
  const last = state.releases.at(-1)
  const standing = state.releases.filter((one) => one.state === 'valid' || one.state === 'used')
  if (
    state.questions.some((one) => one.decision === undefined) ||
    state.releases.some((one) => one.state === 'in question')
  )
    return 'in question'
  if (last?.state === 'withdrawn') return 'withdrawn'
  if (last?.state === 'lapsed') return 'lapsed'
  if (isPassed && awaited.length > 0) return 'passed without release'
  if (holdParties(slot.plan).length > 0 && awaited.length === 0) return 'released'
  if (standing.length > 0) return 'partly released'
  const refusal = state.refusals.at(-1)
  if (refusal && (!state.submitted || instantOf(refusal.observedAt) >= instantOf(state.submitted.observedAt)))
    return 'refused'
  if (state.isSubmitted) return 'submitted'
  return state.records.length > 0 || state.photos.length > 0 ? 'in progress' : 'open'
}
