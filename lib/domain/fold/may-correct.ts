import type { PersonId } from '../facts/fact'
import type { BodyOf } from '../facts/fact-kinds'
import { done, type Result, refused } from '../result'
import { applyCorrection, type CorrectionRefusal } from './apply-correction'
import type { DecidingActor, NotAllowed } from './decision'
import type { RepairState } from './repair-state'

export type CorrectRefusal =
  | { code: 'target-unknown' }
  | { code: 'not-own-entry'; enteredBy: PersonId }
  | CorrectionRefusal
/** Whether a person may correct a record: only what the same person observed or entered, and only with each `from` as the present value. */
export function mayCorrect(
  state: RepairState,
  body: BodyOf<'corrected'>,
  person: PersonId,
): Result<true, CorrectRefusal> {
  const target = state.points
    .flatMap((point) => point.attempts.flatMap((one) => one.records))
    .find((one) => one.fact.id === body.target)
  if (!target) return refused({ code: 'target-unknown' })
  if (target.fact.enteredBy !== person && target.fact.observedBy !== person)
    return refused({ code: 'not-own-entry', enteredBy: target.fact.enteredBy })
  const applied = applyCorrection(target.record, body.changes)
  return applied.ok ? done(true) : refused(applied.refusal)
}

/** Whether a person may bar a batch or an instrument from use: lead, inspector or stores. */
export function mayQuarantine(actor: DecidingActor): Result<true, NotAllowed> {
  return actor.roles.some((role) => role === 'lead' || role === 'inspector' || role === 'stores')
    ? done(true)
    : refused({ code: 'not-allowed', needs: ['lead', 'inspector', 'stores'] })
}

export type LiftRefusal =
  | NotAllowed
  | { code: 'not-quarantined' }
  | { code: 'second-person-needed' }
  | { code: 'recalled' }
/** Whether a quarantine may be lifted: by inspector or engineer with a second person; a recalled batch stays barred. */
export function mayLiftQuarantine(
  subject: { isQuarantined: boolean; recalled?: unknown },
  actor: DecidingActor,
  second: string | null,
): Result<true, LiftRefusal> {
  if (!actor.roles.some((role) => role === 'inspector' || role === 'engineer'))
    return refused({ code: 'not-allowed', needs: ['inspector', 'engineer'] })
  if (!subject.isQuarantined) return refused({ code: 'not-quarantined' })
  if (subject.recalled) return refused({ code: 'recalled' })
  return second === null || second.trim() === '' || second === actor.person
    ? refused({ code: 'second-person-needed' })
    : done(true)
}
